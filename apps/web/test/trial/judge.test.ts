import type { DesignHead, Revision } from "@tidewright/protocol";
import { describe, expect, it } from "vitest";
import type { TrialEditor } from "./editor.ts";
import { judge, type Kept } from "./judge.ts";

type Values = Readonly<Record<string, number>>;

/** A design whose revisions hold these documents, each after the first sent as an edit of that number. */
function keptOf(...documents: readonly Values[]): Kept {
  const revisions = documents.map((document, index) => ({
    ...{ designId: "d", number: index + 1, parent: index === 0 ? null : index, author: "", at: "", name: null },
    editId: index === 0 ? null : `edit ${index + 1}`,
    document,
  })) satisfies Revision[];
  return new Map([["d", { head: { id: "d", revision: documents.length, variantOf: null } as DesignHead, revisions }]]);
}

interface Deeds {
  readonly sent: readonly number[];
  /** Place, value before and value after. */
  readonly made: readonly (readonly [string, number, number])[];
  readonly acknowledged?: readonly (readonly [number, Values])[];
}

const editor = ({ sent, made, acknowledged = [] }: Deeds): TrialEditor =>
  ({
    sent: new Set(sent.map((number) => `edit ${number}`)),
    made: made.map(([cell, was, now]) => ({ cell: `/${cell}`, was: `${was}`, now: `${now}`, at: 0 })),
    acknowledged: acknowledged.map(([revision, document]) => ({
      ...{ designId: "d", revision, editId: `edit ${revision}`, document },
    })),
  }) as unknown as TrialEditor;

describe("the judge of what editors did", () => {
  const start = { a: 1, b: 1 };

  it("finds nothing where two changed different places, one in two steps of which only the last was sent", () => {
    const one = editor({ sent: [2], made: [["a", 1, 2]], acknowledged: [[2, { a: 2, b: 1 }]] });
    const two = editor({
      sent: [3],
      made: [
        ["b", 1, 5],
        ["b", 5, 6],
      ],
    });
    expect(judge(keptOf(start, { a: 2, b: 1 }, { a: 2, b: 6 }), [one, two])).toEqual([]);
  });

  it("finds a value that somebody replaced without having seen it", () => {
    const one = editor({ sent: [2], made: [["a", 1, 2]] });
    const two = editor({ sent: [3], made: [["a", 1, 3]] });
    const wrong = judge(keptOf(start, { a: 2, b: 1 }, { a: 3, b: 1 }), [one, two]);
    expect(wrong).toEqual([expect.stringContaining("replaced")]);
    const seen = editor({ sent: [3], made: [["a", 2, 3]] });
    expect(judge(keptOf(start, { a: 2, b: 1 }, { a: 3, b: 1 }), [one, seen])).toEqual([]);
  });

  it("finds a value that fell away in somebody else's revision", () => {
    const one = editor({ sent: [2], made: [["a", 1, 2]] });
    const two = editor({ sent: [3], made: [["b", 1, 3]] });
    expect(judge(keptOf(start, { a: 2, b: 1 }, { a: 1, b: 3 }), [one, two])).toEqual([
      expect.stringContaining("replaced"),
    ]);
  });

  it("finds work that is nowhere, and an acknowledged revision that is another or none", () => {
    const lost = editor({ sent: [2], made: [["a", 1, 7]] });
    expect(judge(keptOf(start), [lost])).toEqual(["editor 0: /a = 7 is nowhere"]);
    const told = editor({
      sent: [2],
      made: [["a", 1, 2]],
      acknowledged: [
        [2, { a: 9, b: 1 }],
        [3, { a: 2, b: 1 }],
      ],
    });
    expect(judge(keptOf(start, { a: 2, b: 1 }), [told])).toHaveLength(2);
  });
});
