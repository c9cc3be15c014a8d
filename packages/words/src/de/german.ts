import type { MessageKey } from "../en/english.ts";
import { desk } from "./desk.ts";
import { doors } from "./doors.ts";
import { elevation } from "./elevation.ts";
import { near } from "./near.ts";
import { problems } from "./problems.ts";
import { provenance } from "./provenance.ts";
import { pumpProblems } from "./pumpProblems.ts";
import { pumps } from "./pumps.ts";
import { serverProblems } from "./serverProblems.ts";
import { start } from "./start.ts";

/** Every text in German. */
export const german: Record<MessageKey, string> = {
  ...near,
  ...desk,
  ...doors,
  ...elevation,
  ...problems,
  ...provenance,
  ...pumpProblems,
  ...pumps,
  ...serverProblems,
  ...start,
};
