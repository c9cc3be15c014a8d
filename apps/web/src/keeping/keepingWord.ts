import type { Words } from "@tidewright/words";
import type { KeeperState } from "./keeper.ts";
import { makerWords } from "./makerWords.ts";

/** How a word on keeping is meant: all is well, in the making, or somebody should know. */
export interface KeepingWord {
  readonly text: string;
  readonly tone: "well" | "busy" | "waits";
  /** What would help, beside waiting. */
  readonly help?: "signIn" | "file" | "another";
}

/** Returns the one quiet word on how things stand with a design.
 *  kept   durable whether this browser keeps anything   signedOut whether nobody is signed in   -> KeepingWord */
export function keepingWord(kept: KeeperState, durable: boolean, signedOut: boolean, words: Words): KeepingWord {
  const { say } = words;
  const { phase, changes, stop, trouble } = kept.outbox;
  if (phase === "kept") {
    if (signedOut) return { text: say("keeping.signedOut", { count: 0 }), tone: "waits", help: "signIn" };
    // The server has it all, but a cellar will find nothing here.
    if (durable && !kept.onDisk) return { text: say("keeping.keptNoCopy"), tone: "waits" };
    return kept.reached
      ? { text: say("keeping.kept"), tone: "well" }
      : { text: say("keeping.keptOffline"), tone: "well" };
  }
  if (phase === "sending") return { text: say("keeping.keeping"), tone: "busy" };
  const count = Math.max(1, changes);
  if (phase === "waiting") {
    if (!durable || !kept.onDisk) return { text: say("keeping.waitsNowhere"), tone: "waits", help: "file" };
    const text =
      trouble === undefined ? say("keeping.waits", { count }) : say("keeping.waitsTrouble", { trouble, count });
    // Where no service worker may be, as without TLS from another machine, the page itself cannot come from this device.
    return { text: reopens() ? text : `${text}. ${say("keeping.waitsOpen")}`, tone: "waits" };
  }
  if (stop?.why === "another")
    return {
      text: say("keeping.anothers", { makers: makerWords(kept.makers, words) }),
      tone: "waits",
      help: "another",
    };
  if (stop?.why === "signIn")
    return { text: say("keeping.signedOut", { count: changes }), tone: "waits", help: "signIn" };
  if (stop?.why === "notAllowed") return { text: say("keeping.notAllowed"), tone: "waits", help: "file" };
  if (stop?.why === "refused")
    return {
      text: say("keeping.refused", { title: stop.title, detail: stop.detail }),
      tone: "waits",
      help: "file",
    };
  return { text: say("keeping.gone"), tone: "waits", help: "file" };
}

/** Whether this page would open again on this device without a connection. */
function reopens(): boolean {
  return typeof isSecureContext === "undefined" || isSecureContext;
}
