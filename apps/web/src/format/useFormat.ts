import { useMemo } from "react";
import { useSettings } from "../state/settings.ts";
import { type ScreenFormat, screenFormat } from "./screenFormat.ts";

export type { ScreenFormat } from "./screenFormat.ts";

/** Returns the format of the screen; the same function for as long as the choice of units stands. */
export function useFormat(): ScreenFormat {
  const system = useSettings((settings) => settings.system);
  const own = useSettings((settings) => settings.own);
  return useMemo(() => screenFormat({ system, own }), [system, own]);
}
