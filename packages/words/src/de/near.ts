import type { near as english } from "../en/near.ts";
import { bench } from "./bench.ts";
import { catalogue } from "./catalogue.ts";
import { cautions } from "./cautions.ts";
import { curves } from "./curves.ts";
import { drawing } from "./drawing.ts";
import { fields } from "./fields.ts";
import { film } from "./film.ts";
import { findings } from "./findings.ts";
import { keeping } from "./keeping.ts";
import { levers } from "./levers.ts";
import { parts } from "./parts.ts";
import { plan } from "./plan.ts";
import { reasons } from "./reasons.ts";
import { refusals } from "./refusals.ts";
import { scenario } from "./scenario.ts";
import { sources } from "./sources.ts";
import { units } from "./units.ts";

/** The texts in German that every screen may say, and those of engineering; a room's own texts come with the room. */
export const near: Record<keyof typeof english, string> = {
  ...drawing,
  ...findings,
  ...scenario,
  ...plan,
  ...reasons,
  ...refusals,
  ...keeping,
  ...levers,
  ...sources,
  ...catalogue,
  ...units,
  ...fields,
  ...bench,
  ...curves,
  ...cautions,
  ...film,
  ...parts,
};
