import { unitSystems } from "@tidewright/units";
import { englishWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { answersOf } from "./answersOf.ts";
import { emptyDraft, type TypedKey } from "./draft.ts";

const said = (typed: Partial<Record<TypedKey, string>>) =>
  answersOf({ ...emptyDraft, typed }, (dimension) => unitSystems.metric[dimension], false, "EUR", englishWords);

describe("what a draft says", () => {
  it("tells of every answer that cannot be used, not of the first alone", () => {
    const { answers, problems } = said({ length: "abc", width: "-5", height: "1e9", standHeight: "60 m" });
    expect(answers).toBeUndefined();
    expect(Object.keys(problems).sort()).toEqual(["height", "length", "standHeight", "width"]);
  });

  it("calls nothing wrong that is only not said yet", () => {
    expect(said({ length: "1200" })).toMatchObject({ answers: undefined, waiting: true, problems: {} });
    expect(said({ length: "1200", width: "500", height: "600" })).toMatchObject({ waiting: false, problems: {} });
  });
});
