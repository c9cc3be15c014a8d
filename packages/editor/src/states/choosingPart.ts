import { insertPart } from "../edits/insertPart.ts";
import { spotBeside } from "../elevation/spotOnRun.ts";
import { outcomeStep } from "./outcomeStep.ts";
import { type Answer, type ChoosingPart, idle, to } from "./sheet.ts";

/** The palette is open: a choice goes beside the part in hand, or into the hand to look for its place. */
export const inChoosingPart: Answer<ChoosingPart> = (state, event, context) => {
  if (event.kind === "move" || event.kind === "keyUp" || event.kind === "up") return to(state);
  if (event.kind === "key") return event.key === "Escape" ? to(idle) : undefined;
  if (event.kind !== "choose") return undefined;
  if (state.path === undefined) return to({ kind: "InsertingPart", choice: event.choice });
  const spot = spotBeside(context.scene, state.path, state.behind) ?? { path: state.path, share: state.behind ? 1 : 0 };
  return outcomeStep(insertPart(context.design, spot, event.choice), idle);
};
