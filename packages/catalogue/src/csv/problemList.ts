import type { CatalogueProblem } from "../catalogueProblem.ts";

/** Problems of one kind that are listed row by row before the rest are gathered into one line. */
const listedOfAKind = 1000;

/** Collects the problems of a table. A kind is one column with one remedy. A wrong file can break the same column in a
 *  million rows: after the first thousand of a kind the others are counted and named together by their rows, so that
 *  the list stays complete and still fits into memory. */
export function collectProblems(): { add: (problem: CatalogueProblem) => void; list: () => CatalogueProblem[] } {
  const problems: CatalogueProblem[] = [];
  const kinds = new Map<string, { count: number; first: number; last: CatalogueProblem | undefined }>();
  return {
    add(problem) {
      const key = `${problem.row === 1 ? "" : problem.column} ${problem.fix}`;
      let kind = kinds.get(key);
      if (kind === undefined) {
        kind = { count: 0, first: 0, last: undefined };
        kinds.set(key, kind);
      }
      kind.count += 1;
      if (kind.count <= listedOfAKind) problems.push(problem);
      else {
        if (kind.count === listedOfAKind + 1) kind.first = problem.row;
        kind.last = problem;
      }
    },
    list() {
      const gathered: CatalogueProblem[] = [];
      for (const { count, first, last } of kinds.values()) {
        if (last === undefined) continue;
        const more = count - listedOfAKind;
        const where = first === last.row ? `row ${first}` : `rows ${first} to ${last.row}`;
        gathered.push({ ...last, row: first, id: "", problem: `${last.problem} (the same ${more} times in ${where})` });
      }
      return [...problems, ...gathered];
    },
  };
}
