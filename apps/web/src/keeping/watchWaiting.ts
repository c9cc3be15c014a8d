import { localCopies } from "./localCopies.ts";

/** Pause before the first look, so that the page itself comes first, and between two [ms]. */
const firstLook = 3000;
const lookEvery = 60_000;

let looking = false;

/** Looks from time to time, and whenever the connection comes back, whether work waits on this device that no page has
 *  open; it is sent then. */
export function watchWaiting(): void {
  setTimeout(() => void look(), firstLook);
  setInterval(() => void look(), lookEvery);
  addEventListener("online", () => void look());
}

async function look(): Promise<void> {
  if (looking || navigator.onLine === false) return;
  looking = true;
  try {
    const copies = await localCopies();
    if ((await copies.unsent()).length === 0) return;
    const { sendWaiting } = await import("./sendWaiting.ts");
    await sendWaiting(copies);
  } catch {
    // The storage or the code could not be had now; the next look tries again.
  } finally {
    looking = false;
  }
}
