import { useMemo } from "react";
import { useSettings } from "../state/settings.ts";
import { useWords } from "../words/useWords.ts";
import { type ScreenFormat, screenFormat } from "./screenFormat.ts";

export type { ScreenFormat } from "./screenFormat.ts";

/** Returns the format of the screen; the same function for as long as the choice of units and language stands. */
export function useFormat(): ScreenFormat {
  const system = useSettings((settings) => settings.system);
  const own = useSettings((settings) => settings.own);
  const { language } = useWords();
  return useMemo(() => screenFormat({ system, own }, language), [system, own, language]);
}
