/** A copy on this device that only this page writes to. */
export interface Claim {
  readonly key: string;
  release(): void;
}

/** How long an own copy is waited for: after a reload the page before may still hold it [ms]. */
const patience = 800;
/** Where there are no locks, a page says this often that it is alive, and counts as gone after three times that [ms]. */
const pulse = 2000;

/** Takes the first copy of a design that no other page holds: the one this page had before a reload, then the others in
 *  their order, then a new one.
 *  designId   known keys of copies that exist, those with unsent work first   -> the claim, held until the page goes */
export async function claimCopy(designId: string, known: readonly string[]): Promise<Claim> {
  const mine = remembered(designId);
  const claim =
    // A copy of which work was set apart belongs to another design by now and is not among those known.
    (mine === undefined || !known.includes(mine) ? undefined : await claimKey(mine, patience)) ??
    (await firstFree(known.filter((key) => key !== mine))) ??
    (await claimKey(`${designId}/${Math.random().toString(36).slice(2, 10)}`, 0))!;
  rememberCopy(designId, claim.key);
  return claim;
}

async function firstFree(keys: readonly string[]): Promise<Claim | undefined> {
  for (const key of keys) {
    const claim = await claimKey(key, 0);
    if (claim !== undefined) return claim;
  }
  return undefined;
}

/** Takes one copy, waiting a while for whoever holds it; undefined where somebody keeps holding it. */
export function claimKey(key: string, wait: number): Promise<Claim | undefined> {
  return navigator.locks === undefined ? claimByPulse(key) : claimByLock(key, wait);
}

function claimByLock(key: string, wait: number): Promise<Claim | undefined> {
  return new Promise((settle) => {
    const hold = (lock: Lock | null) => {
      if (lock === null) {
        settle(undefined);
        return undefined;
      }
      // The lock is held for as long as this promise is open; the browser gives it back when the page goes.
      return new Promise<void>((release) => settle({ key, release }));
    };
    const name = `tidewright.copy.${key}`;
    const asked =
      wait > 0
        ? navigator.locks.request(name, { signal: AbortSignal.timeout(wait) }, hold)
        : navigator.locks.request(name, { ifAvailable: true }, hold);
    asked.catch(() => settle(undefined));
  });
}

/** Pages without TLS from another machine have no locks: a mark in the storage says who is alive. */
async function claimByPulse(key: string): Promise<Claim | undefined> {
  const name = `tidewright.copy.${key}`;
  try {
    if (Date.now() - Number(localStorage.getItem(name) ?? 0) < 3 * pulse) return undefined;
    const beat = () => localStorage.setItem(name, String(Date.now()));
    beat();
    const timer = setInterval(beat, pulse);
    const release = () => {
      clearInterval(timer);
      localStorage.removeItem(name);
    };
    addEventListener("pagehide", release);
    return { key, release };
  } catch {
    // Storage is closed to us: there are no copies to fight about either.
    return { key, release: () => {} };
  }
}

const memory = (designId: string) => `tidewright.copy.of.${designId}`;

function remembered(designId: string): string | undefined {
  try {
    return sessionStorage.getItem(memory(designId)) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Notes which copy of a design is this page's, for after a reload. */
export function rememberCopy(designId: string, key: string): void {
  try {
    sessionStorage.setItem(memory(designId), key);
  } catch {
    // As above.
  }
}
