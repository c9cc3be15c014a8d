import type { Session } from "@tidewright/protocol";
import type { AccountWithHash } from "@tidewright/store";
import type { Asker } from "./asker.ts";
import { type Doors, instantOf } from "./doors.ts";
import { kept } from "./kept.ts";
import { strangersName } from "./keptWaits.ts";
import { passwordProblems, TooBusy } from "./password.ts";
import { badInput, notAllowed, signInFirst, tooBusy, tooMany } from "./refusal.ts";
import { idleSeconds } from "./sessionCookie.ts";

/** Somebody who was let in: what they are told, and the secret for their cookie. */
export interface LetIn {
  readonly session: Session;
  readonly token: string;
}

const mostPlaces = 10_000;
const wrong = (): Error => signInFirst("no account has this name and this password");

/** Returns what a screen is told of who asks.
 *  doors of the server; asker   -> Session; a customer's link is nobody here */
export async function sessionOf(doors: Doors, asker: Asker): Promise<Session> {
  if (asker.who === "thisMachine" || asker.who === "account") {
    const accountId = asker.who === "account" ? asker.accountId : null;
    return { who: asker.who, accountId, name: asker.name, role: asker.role, firstOwnerWanted: false };
  }
  const firstOwnerWanted = doors.accountsWanted && (await doors.store.accounts.list()).length === 0;
  return { who: "nobody", accountId: null, name: null, role: null, firstOwnerWanted };
}

/** Lets somebody in by name and password, with a new session in place of the one they had.
 *  doors; given name and password; sender key of the address; before secret of the session so far   -> LetIn
 *  Throws: `Refused` 401 alike for a name that is not there, a wrong password and a disabled account, 429 after too many
 *  failures of this name or address, 503 when too many passwords wait.
 *  Source: OWASP Cheat Sheet Series, Authentication ("Authentication and Error Messages", "Login Throttling") and Session
 *  Management ("Renew the Session ID After Any Privilege Level Change"). */
export async function signIn(
  doors: Doors,
  given: { readonly name: string; readonly password: string },
  sender: string,
  before?: string,
): Promise<LetIn> {
  const account = await doors.store.accounts.findByName(given.name);
  const counted = account?.id ?? `${strangersName}${given.name.toLowerCase().slice(0, 200)}`;
  await holdBack(doors, counted, sender, async () => {
    const { right, outdated } = await doors.passwords.check(given.password, account?.passwordHash);
    if (!account || !right || account.disabled) {
      // The name as typed is not written down: people type passwords there.
      const by = { author: account?.name ?? "nobody", at: instantOf(doors) };
      await doors.store.audit.add(
        by,
        "signInFailed",
        { kind: "account", id: account?.id ?? "unknown" },
        `from ${sender}`,
      );
      return false;
    }
    if (outdated) await hashAnew(doors, account, given.password);
    return true;
  });
  if (before !== undefined) await doors.store.sessions.close(before);
  return letIn(doors, account!.id);
}

/** Ends a session on the server, whatever its cookie does.
 *  doors; asker whose session it is   -> Session of nobody, or of this machine where nobody signs in */
export async function signOut(doors: Doors, asker: Asker): Promise<void> {
  if (asker.who !== "account") return;
  await doors.store.sessions.close(asker.token);
  await doors.store.audit.add({ author: asker.name, at: instantOf(doors) }, "signOut", {
    kind: "account",
    id: asker.accountId,
  });
}

/** Gives somebody another password, ends all their sessions and lets them in anew.
 *  doors; asker; given passwords of before and from now on; sender   -> LetIn
 *  Throws: `Refused` 403 where nobody signs in or the present password is wrong, 422 for a weak new one, 429, 503. */
export async function changePassword(
  doors: Doors,
  asker: Asker,
  given: { readonly current: string; readonly next: string },
  sender: string,
): Promise<LetIn> {
  if (asker.who !== "account") throw notAllowed("nobody signs in at this machine, so there is no password to change");
  const account = await doors.store.accounts.findByName(asker.name);
  if (!account) throw signInFirst();
  const problems = passwordProblems("/next", given.next, account.name);
  if (problems.length > 0) throw badInput(problems);
  await holdBack(
    doors,
    account.id,
    sender,
    async () => (await doors.passwords.check(given.current, account.passwordHash)).right,
    () => notAllowed("the present password is another"),
  );
  const passwordHash = await hashed(doors, given.next);
  kept(
    await doors.store.accounts.update(
      account.id,
      account.version,
      { passwordHash },
      { author: asker.name, at: instantOf(doors) },
    ),
  );
  return letIn(doors, account.id);
}

/** Makes the first owner, once, for whoever reads the server's own output.
 *  doors; given secret, name and password; sender   -> LetIn
 *  Throws: `Refused` 403 for a wrong or spent secret and where there is an account or none is wanted, 422, 429. */
export async function makeFirstOwner(
  doors: Doors,
  given: { readonly token: string; readonly name: string; readonly password: string },
  sender: string,
): Promise<LetIn> {
  const wait = doors.limits.firstOwner.attempt(sender, doors.now());
  if (wait > 0) throw tooMany(wait, "too many wrong secrets came from this address");
  const by = { author: given.name, at: instantOf(doors) };
  if (!doors.accountsWanted || !doors.firstOwner.fits(given.token)) {
    if (doors.accountsWanted) {
      await doors.store.audit.add(
        { ...by, author: "nobody" },
        "firstOwnerFailed",
        { kind: "account", id: "unknown" },
        `from ${sender}`,
      );
    }
    throw notAllowed("this is not the secret that the server printed at its start, or it was used");
  }
  doors.limits.firstOwner.pardon(sender);
  const problems = passwordProblems("/password", given.password, given.name);
  if (problems.length > 0) throw badInput(problems);
  const passwordHash = await hashed(doors, given.password);
  const account = kept(
    await doors.store.accounts.create({ name: given.name, role: "owner", passwordHash, onlyFirst: true }, by),
  );
  doors.firstOwner.spend();
  return letIn(doors, account.id);
}

/** A hash of a new password, or 503 when too many wait. */
export async function hashed(doors: Doors, password: string): Promise<string> {
  try {
    return await doors.passwords.hash(password);
  } catch (error) {
    throw error instanceof TooBusy ? tooBusy() : error;
  }
}

async function letIn(doors: Doors, accountId: string): Promise<LetIn> {
  const account = await doors.store.accounts.find(accountId);
  if (!account) throw wrong();
  const now = doors.now();
  const expiresAt = new Date(now + idleSeconds * 1000).toISOString();
  await doors.store.sessions.removeExpired(instantOf(doors));
  const opened = await doors.store.sessions.open(accountId, expiresAt, { author: account.name, at: instantOf(doors) });
  if (!opened.ok) throw wrong();
  return {
    session: { who: "account", accountId: account.id, name: account.name, role: account.role, firstOwnerWanted: false },
    token: opened.value.token,
  };
}

/** Runs a check of a secret under the limits of its account and its sender; every attempt counts until it succeeded. */
async function holdBack(
  doors: Doors,
  account: string,
  sender: string,
  check: () => Promise<boolean>,
  refusal: () => Error = wrong,
): Promise<void> {
  const place = `${account} ${sender}`;
  // Where somebody signed in before, strangers' failures elsewhere do not count.
  const key = doors.knownPlaces.has(place) ? place : account;
  const waitOfSender = doors.limits.address.attempt(sender, doors.now());
  if (waitOfSender > 0) throw tooMany(waitOfSender, "too many wrong passwords came from this address");
  const wait = doors.limits.name.attempt(key, doors.now());
  if (wait > 0) {
    doors.limits.address.pardon(sender);
    throw tooMany(wait, "too many wrong passwords came for this name");
  }
  // Written down before the check, so that no failure is forgiven by a server that ends in its midst.
  await doors.waits.keep();
  let right: boolean;
  try {
    right = await check();
  } catch (error) {
    // Nothing was learnt of the secret.
    doors.limits.address.pardon(sender);
    doors.limits.name.pardon(key);
    await doors.waits.keep();
    throw error instanceof TooBusy ? tooBusy() : error;
  }
  if (!right) throw refusal();
  doors.limits.name.succeeded(key);
  doors.limits.address.pardon(sender);
  doors.knownPlaces.add(place);
  doors.waits.note("place", place, { failures: 0, openAt: doors.now(), last: doors.now() });
  await doors.waits.keep();
  if (doors.knownPlaces.size > mostPlaces) doors.knownPlaces.delete(doors.knownPlaces.values().next().value!);
}

/** Somebody else may change the account meanwhile; then the next sign-in hashes. */
async function hashAnew(doors: Doors, account: AccountWithHash, password: string): Promise<void> {
  const passwordHash = await hashed(doors, password);
  await doors.store.accounts.update(
    account.id,
    account.version,
    { passwordHash },
    { author: account.name, at: instantOf(doors) },
  );
}
