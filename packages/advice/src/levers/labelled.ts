import { type LeverKey, type MessageValues, sayLever } from "@tidewright/words";
import type { Told } from "../levers.ts";

/** Returns an English label together with what it says, so that it can be said again in another language.
 *  key of a text   values to fill in   -> label and told. Source: own construction. */
export function labelled(key: LeverKey, values: MessageValues = {}): { readonly label: string; readonly told: Told } {
  return { label: sayLever(key, values), told: { key, values } };
}
