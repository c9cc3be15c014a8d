import type { Design, History } from "@tidewright/design";
import { isOwnWork } from "../state/maker.ts";
import { askSession, presentMaker } from "../state/session.ts";
import { claimKey } from "./claim.ts";
import { designServer } from "./designServer.ts";
import { keep } from "./keeper.ts";
import { tellKeeping } from "./keepingState.ts";
import type { LocalCopies, LocalCopy } from "./localCopies.ts";
import { designMeans } from "./openKept.ts";

/** How long one design may take before the next one has its turn [ms]. */
const patience = 30_000;

/** Sends what waits on this device of designs that no page has open: work done in a cellar reaches the shop also where
 *  somebody comes back to the list of jobs and not to the design. What is another's stays until somebody says what becomes
 *  of it. */
export async function sendWaiting(copies: LocalCopies): Promise<void> {
  const { session, unreachable } = await askSession();
  if (unreachable || session?.who === "nobody") return;
  for (const { key, makers } of await copies.unsent()) {
    if (!isOwnWork(makers, presentMaker())) continue;
    // Whoever has it open sends it.
    const claim = await claimKey(key, 0);
    if (claim === undefined) continue;
    const copy = await copies.read(key);
    if (copy !== undefined) await sendOne(copy, copies);
    claim.release();
  }
}

/** Sends what waits in a copy that no page has open; done when it is sent, refused, or the server is out of reach. */
export async function sendOne(given: LocalCopy, copies: LocalCopies): Promise<void> {
  const copy = { ...given, outbox: askedAgain(given.outbox) };
  let history: History<Design> = copy.history;
  await new Promise<void>((done) => {
    const timer = setTimeout(end, patience);
    const keeper = keep(copy, {
      server: designServer,
      copies,
      means: designMeans(() => copy.surroundings.head.name),
      // A table that nobody sits at.
      table: {
        history: () => history,
        lay(next) {
          history = next;
        },
        watch: () => () => {},
        busy: () => false,
      },
      maker: presentMaker,
      labelOf: ({ author }) => author,
      takenIn: () => {},
      setApart: (from, parcel) => tellKeeping({ apart: { from, parcel } }),
      report({ outbox: { phase, attempts }, writing }) {
        if (writing) return;
        if (phase === "kept" || phase === "stopped" || (phase === "waiting" && attempts > copy.outbox.attempts)) end();
      },
      onChange: () => () => {},
    });
    function end(): void {
      clearTimeout(timer);
      // The first report may come before the keeper has been handed out.
      queueMicrotask(() => {
        keeper.stop();
        void keeper.written().finally(done);
      });
    }
  });
}

/** What stood in the way may be gone: somebody has signed in since, or may do more. */
function askedAgain(outbox: LocalCopy["outbox"]): LocalCopy["outbox"] {
  const { stop } = outbox;
  if (stop === undefined || stop.why === "gone" || stop.why === "refused") return outbox;
  return { ...outbox, phase: "waiting", stop: undefined };
}
