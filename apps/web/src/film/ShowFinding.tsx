import type { Finding } from "@tidewright/advice";
import { presentDesign, useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { useFilm } from "./filmState.ts";
import { scenarioOfFinding } from "./scenarioOfFinding.ts";
import { showFilm } from "./showFilm.ts";

/** The way from a finding over time to the film in which it was made; nothing for other findings. */
export function ShowFinding({ finding }: { readonly finding: Finding }) {
  const design = useBench((state) => state.history.present);
  const sweep = useFilm((state) => state.sweep);
  const scenario = sweep?.design === design ? scenarioOfFinding(finding, sweep.result.rows) : undefined;
  const { say } = useWords();
  if (scenario === undefined) return null;
  return (
    <button type="button" className="action" onClick={() => showFilm(presentDesign(), scenario, "worst")}>
      {say("film.table.show")}
    </button>
  );
}
