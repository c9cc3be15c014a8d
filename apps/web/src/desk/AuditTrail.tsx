import { type AuditEntry, routes } from "@tidewright/protocol";
import { useEffect, useState } from "react";
import { ask } from "../api/ask.ts";
import { useWords } from "../words/useWords.ts";
import { refusalWords } from "./refusalWords.ts";

const pageSize = 50;

/** Who did what, newest first. */
export function AuditTrail() {
  const words = useWords();
  const { say } = words;
  const [lines, setLines] = useState<readonly AuditEntry[]>([]);
  const [more, setMore] = useState(false);
  const [problem, setProblem] = useState<string>();
  const load = async (offset: number) => {
    const answer = await ask(routes.audit, { query: { limit: pageSize, offset } });
    if (!answer.ok) {
      setProblem(refusalWords(answer, words));
      return;
    }
    setProblem(undefined);
    setMore(answer.value.items.length === pageSize);
    setLines((before) => [...before.slice(0, offset), ...answer.value.items]);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked once, and then on demand
  useEffect(() => {
    void load(0);
  }, []);
  return (
    <section className="desk-block">
      <h2>{say("desk.audit")}</h2>
      <p className="quiet">{say("desk.auditExplain")}</p>
      {problem === undefined ? null : <p className="field-problem">{problem}</p>}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="table-scroll" tabIndex={0} aria-label={say("desk.audit")}>
        <table className="audit">
          <thead>
            <tr>
              <th scope="col">{say("desk.auditWhen")}</th>
              <th scope="col">{say("desk.auditWho")}</th>
              <th scope="col">{say("desk.auditWhat")}</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr key={line.id}>
                <td>{words.instant(line.at)}</td>
                <td>{line.author}</td>
                <td>
                  {line.action}{" "}
                  <span className="quiet">{[line.subjectKind, line.detail].filter(Boolean).join(" · ")}</span>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {more ? (
        <button type="button" className="action" onClick={() => void load(lines.length)}>
          {say("desk.older")}
        </button>
      ) : null}
    </section>
  );
}
