import { sayAgain } from "@tidewright/words";
import { show, useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { Sheet } from "./Sheet.tsx";

/** Everything that is wrong with a file that could not be opened: where, what stands there, what to write instead. */
export function ProblemsDialog() {
  const open = useBench((state) => state.dialog === "problems");
  const refused = useBench((state) => state.refused);
  const present = useBench((state) => state.history.present.name);
  const words = useWords();
  const { say } = words;
  const count = refused?.problems.length ?? 0;
  return (
    <Sheet
      name="problems"
      title={say("bench.problems.title", { file: refused?.name ?? say("bench.problems.theFile"), count })}
      open={open}
      onClose={() => show({ dialog: undefined, refused: undefined })}
    >
      <p className="quiet">{say("bench.problems.present", { name: present })}</p>
      <ol className="problem-list">
        {refused?.problems.map((problem) => (
          <li key={`${problem.path} ${problem.message}`}>
            <code className="problem-path">{problem.path === "" ? say("bench.problems.wholeFile") : problem.path}</code>
            <p>{sayAgain(problem.message, words)}</p>
            {problem.value === undefined ? null : (
              <p className="problem-value">{say("bench.problems.holds", { value: short(problem.value) })}</p>
            )}
            <p className="problem-fix">{sayAgain(problem.fix, words)}</p>
          </li>
        ))}
      </ol>
    </Sheet>
  );
}

const longest = 80;

function short(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > longest ? `${text.slice(0, longest)}…` : text;
}
