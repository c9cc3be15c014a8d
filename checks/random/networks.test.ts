import { solveNetwork } from "@tidewright/engine";
import { describe, expect, it } from "vitest";
import { judge } from "./judge.ts";
import { randomNetwork } from "./randomNetwork.ts";

/** Networks that the solver once got wrong, by number, and what went wrong. */
const once = [
  [70, "a part cut off by shut links was balanced through them and not by its own open links"],
  [74, "rounding in a closed valve's leak kept the residual just above the tolerance"],
  [124, "a shut link kept the rounding of the balance"],
  [151, "a demand was called out of reach while a shut check valve could have opened"],
  [1201, "two check valves took turns at opening"],
  [1933, "losses of a micrometre were compared with heads of metres"],
  [4206, "rounding in a leaking valve hid that the rest had converged"],
  [14960, "rounding let a link at rest be shut and opened in turn"],
  [23257, "the rounding of a head behind a shut link opened and shut it for ever"],
] as const;

describe("a random network", () => {
  it.each(once)("number %i holds: %s", (number) => {
    const model = randomNetwork(number);
    expect(judge(model, solveNetwork(model))).toEqual([]);
  });

  // The same 1500 each time; `npm run soak -w checks` takes 100 000.
  it.each(Array.from({ length: 15 }, (_, i) => [100 * i, 100 * i + 99] as const))(
    "balances, accounts for every loss and shuts only what must be, numbers %i to %i",
    (first, last) => {
      for (let number = first; number <= last; number++) {
        const model = randomNetwork(number);
        expect(judge(model, solveNetwork(model)), `network ${number}`).toEqual([]);
      }
    },
  );
});
