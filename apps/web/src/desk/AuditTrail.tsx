import { type AuditEntry, routes } from "@tidewright/protocol";
import { useEffect, useState } from "react";
import { ask } from "../api/ask.ts";
import { useWords } from "../words/useWords.ts";
import { authorWords } from "./authorWords.ts";
import { customerHash, jobHash } from "./deskAddress.ts";
import { refusalWords } from "./refusalWords.ts";
import { useCustomers, useJobs } from "./shopLists.ts";

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
  /** In words where the catalogue has them; a newer server may do what this page has no word for. */
  const told: Told = (area, code) => {
    const key = `desk.${area}.${code}`;
    return words.knows(key) ? say(key) : code;
  };
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
              <th scope="col">{say("desk.auditOn")}</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr key={line.id}>
                <td>{words.instant(line.at)}</td>
                <td>{authorWords(line.author, words)}</td>
                <td>{told("did", line.action)}</td>
                <td>
                  <Subject line={line} told={told} />
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

type Told = (area: "did" | "subject", code: string) => string;

/** What it was done to, with a way there while it is there. */
function Subject({ line, told }: { readonly line: AuditEntry; readonly told: Told }) {
  const jobs = useJobs().items;
  const customers = useCustomers().items;
  const kind = told("subject", line.subjectKind);
  const of = line.subjectKind === "job" ? jobs : line.subjectKind === "customer" ? customers : [];
  const name = of.find(({ id }) => id === line.subjectId)?.name;
  if (name === undefined) return kind;
  const address = line.subjectKind === "job" ? jobHash(line.subjectId) : customerHash(line.subjectId);
  return (
    <>
      {kind}{" "}
      <a className="in-text" href={address}>
        {name}
      </a>
    </>
  );
}
