import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergeDocuments } from "./mergeDocuments.ts";

/** One part a line, merged by git merge-file, the three-way merge of lines in git; undefined where it finds a conflict. */
function mergedByGit(folder: string, lists: readonly (readonly string[])[]): string[] | undefined {
  const files = ["mine", "base", "theirs"].map((name) => join(folder, name));
  files.forEach((file, i) => writeFileSync(file, lists[i]!.map((line) => `${line}\n`).join("")));
  const { status, stdout } = spawnSync("git", ["merge-file", "-p", ...files], { encoding: "utf8" });
  return status === 0 ? stdout.split("\n").slice(0, -1) : undefined;
}

const base = ["pipe 1", "union", "elbow", "pipe 2", "gate", "pipe 3", "strainer", "tee", "pipe 4", "outlet"];
const parts = (lines: readonly string[]) => lines.map((line) => ({ kind: line }));

/** The run with some parts taken out and some put in, each of another name than all others. */
const changedRun = (who: string) =>
  fc.array(fc.tuple(fc.nat(9), fc.boolean()), { maxLength: 3 }).map((changes) => {
    const run = [...base];
    changes.forEach(([place, out], i) => {
      if (out) run.splice(Math.min(place, run.length - 1), 1);
      else run.splice(place, 0, `${who} ${i}`);
    });
    return run;
  });

describe("merging runs of parts", () => {
  it("agrees with git's merge of the same lines wherever git finds no conflict", () => {
    const folder = mkdtempSync(join(tmpdir(), "merge-"));
    let clean = 0;
    try {
      fc.assert(
        fc.property(changedRun("mine"), changedRun("theirs"), (mine, theirs) => {
          const lines = mergedByGit(folder, [mine, base, theirs]);
          if (lines === undefined) return;
          clean++;
          expect(mergeDocuments(parts(base), parts(mine), parts(theirs))).toEqual({ ok: true, merged: parts(lines) });
        }),
        { numRuns: 100 },
      );
    } finally {
      rmSync(folder, { recursive: true });
    }
    expect(clean).toBeGreaterThan(20);
  });
});
