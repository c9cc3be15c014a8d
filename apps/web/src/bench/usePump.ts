import type { Candidate, Ranking } from "@tidewright/advice";
import { findPump } from "@tidewright/catalogue";
import type { Design, Edit, LoopPump, Problem } from "@tidewright/design";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";
import { edit, say } from "../state/bench.ts";
import { words } from "../words/useWords.ts";

/** Returns the edits that put a candidate of a ranking into its loop, keeping where the present pump stands. */
function pumpEdits(design: Design, ranking: Ranking, candidate: Candidate): Edit[] {
  const path = `/loops/${ranking.loop}`;
  const loop = design.loops[ranking.loop];
  const pumps = candidate.pumpIds.map((ref): LoopPump => {
    const old = loop?.pumps[0];
    const row = findPump(currentCatalogue(), ref);
    const separate = row?.controller !== undefined && !row.controller.included;
    return {
      ref,
      speed: candidate.speed,
      placed: old?.placed ?? "inSump",
      ...(old?.elevation === undefined ? {} : { elevation: old.elevation }),
      ...(separate ? { controller: true } : {}),
    };
  });
  const edits: Edit[] = [{ op: "set", path: `${path}/pumps`, value: pumps }];
  if (pumps.length > 1) edits.push({ op: "set", path: `${path}/arrangement`, value: "parallel" });
  else if (loop?.arrangement !== undefined) edits.push({ op: "remove", path: `${path}/arrangement` });
  return edits;
}

/** Puts a candidate into its loop as one step of the history. */
export function takePump(design: Design, ranking: Ranking, candidate: Candidate): Problem | undefined {
  const problem = edit(pumpEdits(design, ranking, candidate), {
    label: words().say("bench.ranking.step", { pump: candidate.label }),
  });
  if (problem === undefined) say(words().say("bench.ranking.inLoop", { pump: candidate.label }));
  return problem;
}
