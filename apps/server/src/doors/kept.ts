import type { Outcome } from "@tidewright/store";
import { badInput, notThere, Refused } from "./refusal.ts";

/** Returns what the store kept, or throws why it did not: 404, 422 with every problem, 412 with what somebody else left.
 *  outcome of a change   -> its value
 *  Throws: `Refused`. */
export function kept<Value, Current>(outcome: Outcome<Value, Current>): Value {
  if (outcome.ok) return outcome.value;
  if (outcome.reason === "missing") throw notThere(outcome.message);
  if (outcome.reason === "invalid") throw badInput(outcome.problems);
  throw new Refused({
    type: "urn:tidewright:problem:conflict",
    title: "Somebody else was first",
    status: 412,
    detail: "what they left is in current: look at it and send the change again with its tag",
    current: (outcome as { readonly current: unknown }).current,
  });
}
