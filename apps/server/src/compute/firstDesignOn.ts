import { type StartAnswers, shopGroundOf } from "@tidewright/advice";
import type { Catalogue } from "@tidewright/catalogue";
import type { ShopSettings } from "@tidewright/protocol";
import type { ThreadPool } from "./threadPool.ts";

/** A first design with what was taken for it and why, as JSON has it, or why none could be made. */
export type MadeDesign =
  | { readonly design: unknown; readonly defaults: unknown; readonly notes: unknown }
  | { readonly why: string };

/** Makes a first design of a customer's answers. */
export type MakeDesign = (answers: StartAnswers) => Promise<MadeDesign>;

/** Returns what makes first designs on threads of their own: one takes up to a second, in which everybody else is answered.
 *  threads to compute on; pumps of the shop's own; settings of the shop, whose sockets, money and prices a new design has   -> MakeDesign
 *  Throws (its result): `Refused` 503 where too many computations wait. */
export function firstDesignOn(threads: ThreadPool, pumps: Catalogue["pumps"], settings?: ShopSettings): MakeDesign {
  const said = settings === undefined ? {} : { shop: shopGroundOf(settings), prices: settings.priceMultipliers };
  const asked = { computation: "firstDesign", query: {}, pumps, ...said } as const;
  return async (answers) => {
    const answer = await threads.run({ ...asked, text: JSON.stringify(answers) });
    if (answer.ok) return JSON.parse(answer.json) as MadeDesign;
    if ("problems" in answer)
      return { why: answer.problems.map(({ path, message }) => `${path} ${message}`).join("; ") };
    // A fault bears where it arose, which says nothing to a shop.
    return { why: answer.fault.split("\n")[0]!.replace(/^\w*Error: /, "") };
  };
}
