import type { MessageKey } from "../en/english.ts";
import { catalogue } from "./catalogue.ts";
import { desk } from "./desk.ts";
import { drawing } from "./drawing.ts";
import { findings } from "./findings.ts";
import { levers } from "./levers.ts";
import { reasons } from "./reasons.ts";
import { scenario } from "./scenario.ts";
import { sources } from "./sources.ts";
import { units } from "./units.ts";

/** Every text in German. */
export const german: Record<MessageKey, string> = {
  ...desk,
  ...drawing,
  ...findings,
  ...scenario,
  ...reasons,
  ...levers,
  ...sources,
  ...catalogue,
  ...units,
};
