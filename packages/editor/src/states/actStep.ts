import { insertPart } from "../edits/insertPart.ts";
import { actOn, type PartAction } from "../edits/partActions.ts";
import { runEndOf } from "../edits/runEnds.ts";
import { runPartAt } from "../edits/runPart.ts";
import { spotBeside } from "../elevation/spotOnRun.ts";
import { outcomeStep } from "./outcomeStep.ts";
import { idle, type SheetContext, type Step, to } from "./sheet.ts";
import { typeStep } from "./typingQuantity.ts";

/** Returns what an action on a part leads to, whether it was a key, a button at the part or one in the table.
 *  context   action   path of the part   -> Step
 *  Source: own construction. */
export function actStep(context: SheetContext, action: PartAction, path: string): Step {
  const { design, scene } = context;
  switch (action) {
    case "edit":
      return typeStep(context, path);
    case "insertAfter":
    case "insertBefore": {
      const there = runPartAt(design, path);
      if (there === undefined) return to({ kind: "ChoosingPart", behind: true });
      return to({ kind: "ChoosingPart", path, behind: action === "insertAfter" });
    }
    case "branch": {
      const spot = spotBeside(scene, path, true) ?? { path, share: 1 };
      return outcomeStep(insertPart(design, spot, "tee"), idle);
    }
    case "route": {
      const from = runEndOf(context, path, false);
      return from === undefined ? to({ kind: "RoutingRun" }) : to({ kind: "RoutingRun", from });
    }
    case "choosePump":
      return to(idle, { kind: "rank", loop: Number(/^\/loops\/(\d+)/.exec(path)?.[1] ?? 0) });
    default: {
      const outcome = actOn(design, path, action);
      return outcome === undefined ? to(idle) : outcomeStep(outcome, idle);
    }
  }
}
