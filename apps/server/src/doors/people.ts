import type { Account, AccountRole } from "@tidewright/protocol";
import { type Doors, instantOf } from "./doors.ts";
import { kept } from "./kept.ts";
import { passwordProblems } from "./password.ts";
import { badInput, notThere } from "./refusal.ts";
import { hashed } from "./signIn.ts";

/** Lets somebody sign in from now on.
 *  doors; given name, role and password; author who lets them   -> Account
 *  Throws: `Refused` 422 for a weak password or a name that is taken. */
export async function createAccount(
  doors: Doors,
  given: { readonly name: string; readonly role: AccountRole; readonly password: string },
  author: string,
): Promise<Account> {
  const problems = passwordProblems("/password", given.password, given.name);
  if (problems.length > 0) throw badInput(problems);
  const passwordHash = await hashed(doors, given.password);
  return kept(
    await doors.store.accounts.create(
      { name: given.name, role: given.role, passwordHash },
      { author, at: instantOf(doors) },
    ),
  );
}

/** Changes an account; another role, password or disabling ends its sessions.
 *  doors; id of the account; version that was seen; given what changes; author who changes it   -> Account
 *  Throws: `Refused` 404, 412 with the account as it is, 422 for a weak password, a taken name and the last owner. */
export async function changeAccount(
  doors: Doors,
  id: string,
  version: number,
  given: {
    readonly name?: string | undefined;
    readonly role?: AccountRole | undefined;
    readonly disabled?: boolean | undefined;
    readonly password?: string | undefined;
  },
  author: string,
): Promise<Account> {
  const known = await doors.store.accounts.find(id);
  if (!known) throw notThere(`There is no account "${id}".`);
  const problems =
    given.password === undefined ? [] : passwordProblems("/password", given.password, given.name ?? known.name);
  if (problems.length > 0) throw badInput(problems);
  const fields = {
    ...(given.name === undefined ? {} : { name: given.name }),
    ...(given.role === undefined ? {} : { role: given.role }),
    ...(given.disabled === undefined ? {} : { disabled: given.disabled }),
    ...(given.password === undefined ? {} : { passwordHash: await hashed(doors, given.password) }),
  };
  return kept(await doors.store.accounts.update(id, version, fields, { author, at: instantOf(doors) }));
}
