import { demoJobs } from "../document/demoJobs.ts";
import { openDesign } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";

/** The jobs that come with the bench, to lay one on the table. */
export function TrialJobs() {
  const { say } = useWords();
  return demoJobs.map(({ id, design }) => (
    <button
      key={id}
      type="button"
      data-job={id}
      onClick={() => openDesign(design, say("keeping.bar.opened", { name: design.name }))}
    >
      {design.name}
    </button>
  ));
}
