import { isOwnWork, makerKey } from "../state/maker.ts";
import { presentMaker, presentSession, watchSession } from "../state/session.ts";
import { lookForAnothers } from "./anothersWork.ts";
import { localCopies } from "./localCopies.ts";

/** Pause before the first look, so that the page itself comes first, and between two [ms]. */
const firstLook = 3000;
const lookEvery = 60_000;

let looking = false;
/** Somebody else has sat down while it was looked. */
let again = false;

/** Looks from time to time, whenever the connection comes back, and when somebody else sits here, whether work waits on
 *  this device that no page has open; one's own is sent then, another's is told of. */
export function watchWaiting(): void {
  setTimeout(() => void look(), firstLook);
  setInterval(() => void look(), lookEvery);
  addEventListener("online", () => void look());
  let known = whoIsHere();
  watchSession(() => {
    if (known === whoIsHere()) return;
    known = whoIsHere();
    if (known !== undefined) void look();
  });
}

/** Who has been let in, as far as the server has said so. */
function whoIsHere(): string | undefined {
  const { session } = presentSession();
  return session === undefined || session.who === "nobody" ? undefined : makerKey(presentMaker());
}

async function look(): Promise<void> {
  if (looking) {
    again = true;
    return;
  }
  looking = true;
  again = false;
  try {
    await lookForAnothers();
    if (navigator.onLine === false) return;
    const copies = await localCopies();
    if (!(await copies.unsent()).some(({ makers }) => isOwnWork(makers, presentMaker()))) return;
    const { sendWaiting } = await import("./sendWaiting.ts");
    await sendWaiting(copies);
  } catch {
    // The storage or the code could not be had now; the next look tries again.
  } finally {
    looking = false;
    if (again) void look();
  }
}
