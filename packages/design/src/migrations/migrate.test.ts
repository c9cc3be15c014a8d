import { readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readDesign } from "../read/readDesign.ts";
import { migrate } from "./migrate.ts";
import type { Migration } from "./migrations.ts";

const text = readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8");

/** The demonstration reef as the draft form had it. */
function draft(): Record<string, unknown> {
  const design = JSON.parse(text.replaceAll('"baffle"', '"weirAfter"'));
  const { run, ...loop } = design.loops[0];
  const { returnTurnover: _, ...wishes } = design.wishes;
  return { ...design, tidewright: 0, loops: [{ ...loop, tree: run }], wishes: { ...wishes, turnover: 5 } };
}

describe("bringing a document up to the newest version", () => {
  it("reads a document of the draft form as the same system, its one turnover as a range", () => {
    const now = JSON.parse(text);
    const read = readDesign(JSON.stringify(draft()), demoCatalogue);
    const five = { value: 5, unit: "1/h" };
    expect(read).toEqual({
      ok: true,
      migratedFrom: 0,
      design: { ...now, wishes: { ...now.wishes, returnTurnover: [five, five] } },
    });
  });

  it("leaves the document it was given as it was", () => {
    const document = draft();
    const before = structuredClone(document);
    migrate(document);
    expect(document).toEqual(before);
  });

  it("gives a document of the newest version back as the very same object", () => {
    const document = JSON.parse(text);
    expect(migrate(document)).toEqual({ ok: true, value: document, from: 1, to: 1 });
    expect((migrate(document) as { value: unknown }).value).toBe(document);
  });

  it("takes a toy document through every step of a longer chain, in order, once each", () => {
    const step =
      (mark: string): Migration =>
      (document) => ({ ...document, trail: `${document["trail"] ?? ""}${mark}` });
    const chain = [step("a"), step("b"), step("c")];
    expect(migrate({ tidewright: 0 }, chain)).toEqual({
      ok: true,
      value: { tidewright: 3, trail: "abc" },
      from: 0,
      to: 3,
    });
    expect(migrate({ tidewright: 2 }, chain)).toEqual({
      ok: true,
      value: { tidewright: 3, trail: "c" },
      from: 2,
      to: 3,
    });
    expect(migrate({ tidewright: 4 }, chain)).toMatchObject({
      ok: false,
      problems: [{ path: "/tidewright", value: 4 }],
    });
  });

  it("does not overwrite a field that already has its new name; the old one is then named as unknown", () => {
    const both = draft();
    (both["loops"] as Record<string, unknown>[])[0]!["run"] = [{ kind: "outlet", to: "display" }];
    const read = readDesign(JSON.stringify(both));
    expect(!read.ok && read.problems.map(({ path }) => path)).toEqual(["/loops/0/tree"]);
  });

  it("never fails on a draft with nonsense in it", () => {
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom("wishes", "loops", "sump", "name"), fc.jsonValue()), (fields) => {
        expect(migrate({ ...fields, tidewright: 0 })).toMatchObject({ ok: true, from: 0, to: 1 });
      }),
    );
  });
});
