import type { Session } from "@tidewright/protocol";

/** Who makes an edit, as the session told it: an account, whoever sits at the shop's own machine, or nobody that is known. */
export type Maker =
  | { readonly who: "account"; readonly id: string; readonly name: string }
  | { readonly who: "thisMachine" }
  | { readonly who: "nobody" };

/** Returns who somebody is by a word that stays the same when an account is renamed. */
export function makerKey(maker: Maker): string {
  return maker.who === "account" ? maker.id : maker.who;
}

/** Returns who a session is, or undefined where it is nobody's. */
export function makerOf(session: Session | undefined): Maker | undefined {
  if (session?.who === "thisMachine") return { who: "thisMachine" };
  if (session?.who !== "account" || session.accountId === null) return undefined;
  return { who: "account", id: session.accountId, name: session.name ?? "" };
}

/** Returns those who made something with one more, each once, under the name they have last. */
export function withMaker(makers: readonly Maker[], maker: Maker): readonly Maker[] {
  const known = makers.find((one) => makerKey(one) === makerKey(maker));
  return known === undefined ? [...makers, maker] : makers;
}

/** Whether work may go out under somebody without a question: nobody else has a part in it. What was made while nobody
 *  was known can only be theirs on a machine where nobody signs in. */
export function isOwnWork(makers: readonly Maker[], me: Maker): boolean {
  return makers.every((one) => makerKey(one) === makerKey(me) || (one.who === "nobody" && me.who === "thisMachine"));
}
