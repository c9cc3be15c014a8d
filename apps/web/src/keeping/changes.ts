import { type StoreChange, storeChange } from "@tidewright/protocol";
import { askSession } from "../state/session.ts";

/** What the server has told: something is kept now that was not before, or the line was down and anything may be. */
export type Told = StoreChange | { readonly kind: "lineBack" };

type Listener = (told: Told) => void;

const listeners = new Set<Listener>();
let running = false;
let channel: BroadcastChannel | undefined;

/** Longest and shortest pause before a broken line is tried anew [ms]. */
const pauses = [1000, 30_000] as const;

/** Tells `listener` of everything that is kept on the server from now on, by whomever; returns how to stop it. All pages
 *  of a browser share one line, since a browser allows only a few to one server. */
export function onChange(listener: Listener): () => void {
  listeners.add(listener);
  if (!running) start();
  return () => listeners.delete(listener);
}

function start(): void {
  running = true;
  if (navigator.locks === undefined || typeof BroadcastChannel === "undefined") {
    void listen(tell);
    return;
  }
  channel = new BroadcastChannel("tidewright.changes");
  channel.onmessage = (event: MessageEvent<Told>) => tell(event.data);
  // Whoever holds the lock listens for all; when that page goes, the next in line takes over.
  void navigator.locks.request("tidewright.changes", () =>
    listen((told) => {
      tell(told);
      channel?.postMessage(told);
    }),
  );
}

function tell(told: Told): void {
  for (const listener of listeners) listener(told);
}

/** Listens for as long as the page lives. */
async function listen(hear: (told: Told) => void): Promise<void> {
  for (let failures = 0; ; failures += 1) {
    await new Promise<void>((closed) => {
      const source = new EventSource("api/events");
      source.onopen = () => {
        failures = 0;
        hear({ kind: "lineBack" });
      };
      source.addEventListener("change", (event) => {
        const read = storeChange.safeParse(parsed((event as MessageEvent<string>).data));
        if (read.success) hear(read.data);
      });
      // The server itself did not hear of others' changes for a while: it is the same as if our own line had been down.
      source.addEventListener("refetch", () => hear({ kind: "lineBack" }));
      source.onerror = () => {
        // The browser tries again by itself unless the server has answered and said no.
        if (source.readyState === EventSource.CLOSED) closed();
      };
    });
    // It said no: most likely nobody is signed in here any more, and the page must not go on showing what it has.
    await askSession();
    const [shortest, longest] = pauses;
    await new Promise((done) => setTimeout(done, Math.min(longest, shortest * 2 ** failures)));
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
