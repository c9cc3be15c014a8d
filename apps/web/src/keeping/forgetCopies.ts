import { claimKey } from "./claim.ts";
import { localCopies } from "./localCopies.ts";

/** Takes off this device what the server has too and no page has open, such as when somebody signs out. What waits to be
 *  sent stays: it is nowhere else. */
export async function forgetCopies(): Promise<void> {
  const copies = await localCopies();
  for (const key of await copies.sent()) {
    const claim = await claimKey(key, 0);
    if (claim === undefined) continue;
    await copies.drop(key);
    claim.release();
  }
}
