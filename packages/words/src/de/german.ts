import type { MessageKey } from "../en/english.ts";
import { bench } from "./bench.ts";
import { catalogue } from "./catalogue.ts";
import { cautions } from "./cautions.ts";
import { curves } from "./curves.ts";
import { desk } from "./desk.ts";
import { doors } from "./doors.ts";
import { drawing } from "./drawing.ts";
import { elevation } from "./elevation.ts";
import { fields } from "./fields.ts";
import { film } from "./film.ts";
import { findings } from "./findings.ts";
import { keeping } from "./keeping.ts";
import { levers } from "./levers.ts";
import { parts } from "./parts.ts";
import { plan } from "./plan.ts";
import { problems } from "./problems.ts";
import { provenance } from "./provenance.ts";
import { pumpProblems } from "./pumpProblems.ts";
import { pumps } from "./pumps.ts";
import { reasons } from "./reasons.ts";
import { scenario } from "./scenario.ts";
import { serverProblems } from "./serverProblems.ts";
import { sources } from "./sources.ts";
import { start } from "./start.ts";
import { units } from "./units.ts";

/** Every text in German. */
export const german: Record<MessageKey, string> = {
  ...desk,
  ...doors,
  ...drawing,
  ...findings,
  ...scenario,
  ...plan,
  ...reasons,
  ...keeping,
  ...levers,
  ...sources,
  ...catalogue,
  ...start,
  ...units,
  ...fields,
  ...bench,
  ...provenance,
  ...curves,
  ...cautions,
  ...film,
  ...problems,
  ...elevation,
  ...parts,
  ...pumps,
  ...pumpProblems,
  ...serverProblems,
};
