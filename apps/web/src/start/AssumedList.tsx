import type { StartDefault } from "@tidewright/advice";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import { itemText, sourceText, valueText, whyText } from "./valueText.ts";

interface Props {
  readonly defaults: readonly StartDefault[];
  /** Brings the eye and the caret to the question that would replace a default. */
  onEdit(question: string): void;
}

/** Everything that nobody said: value, reason, source, and the way to change it. */
export function AssumedList({ defaults, onEdit }: Props) {
  const words = useWords();
  const format = useFormat();
  const { say } = words;
  return (
    <section className="start-assumed" aria-labelledby="start-assumed">
      <h2 id="start-assumed">{say("start.assumed")}</h2>
      <p className="quiet">{say("start.assumed.lead", { count: defaults.length })}</p>
      <ul className="assumed-list">
        {defaults.map((entry) => (
          <li key={entry.path} className="assumed">
            <span className="assumed-what">{itemText(entry, words, format)}</span>
            <span className="assumed-value">{valueText(entry, words, format)}</span>
            <span className="assumed-why">
              {whyText(entry, words, format)} · {sourceText(entry.source, words)}
            </span>
            {entry.question === undefined ? (
              <span className="assumed-edit quiet">{say("start.assumed.onBench")}</span>
            ) : (
              <button
                type="button"
                className="assumed-edit tool"
                aria-label={`${say("start.assumed.edit")}: ${itemText(entry, words, format)}`}
                onClick={() => onEdit(entry.question as string)}
              >
                {say("start.assumed.edit")}
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
