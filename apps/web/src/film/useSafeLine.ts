import { layoutFrame } from "@tidewright/editor";
import { toSI } from "@tidewright/units";
import { useMemo } from "react";
import type { RuledLine } from "../drawing/Elevation.tsx";
import { useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { useFilm } from "./filmState.ts";
import { safeLineLabel } from "./SafeLine.tsx";

/** Returns the highest safe line to rule on the running drawing, while the safety table is in sight and about this document. */
export function useSafeLine(): RuledLine | undefined {
  const assessed = useBench((state) => state.assessed);
  const shown = useBench((state) => state.tab === "safety" && state.drawerOpen);
  const sweep = useFilm((state) => state.sweep);
  const level =
    shown && sweep?.design === assessed?.design ? sweep?.result.answers.highestSafeOperatingLevel : undefined;
  const words = useWords();
  return useMemo(() => {
    if (assessed === undefined || level === undefined) return undefined;
    const { sump, chambers, display, box } = layoutFrame(assessed.design, assessed.assessment);
    const last = chambers.at(-1)!;
    const y = toSI(assessed.design.sump.floor, "length") + level;
    return {
      from: { x: last.x0, y },
      to: { x: last.x1, y },
      part: safeLineLabel({ ...sump, x1: last.x1 }, level, [display, box], words),
    };
  }, [assessed, level, words]);
}
