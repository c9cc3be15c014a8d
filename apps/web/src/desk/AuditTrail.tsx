import { type AuditEntry, routes } from "@tidewright/protocol";
import { useState } from "react";
import { type Answered, ask } from "../api/ask.ts";
import { useWords } from "../words/useWords.ts";
import { auditWords } from "./auditWords.ts";
import { authorWords } from "./authorWords.ts";
import { customerHash, jobHash } from "./deskAddress.ts";
import { refusalWords } from "./refusalWords.ts";
import { useCustomers, useJobs } from "./shopLists.ts";
import { useAsked } from "./useAsked.ts";

const pageSize = 50;
/** Most lines that one question brings. */
const mostAtOnce = 500;

interface Trail {
  readonly lines: readonly AuditEntry[];
  readonly more: boolean;
}

/** Who did what, newest first; anew with everything that anybody does. */
export function AuditTrail() {
  const words = useWords();
  const { say } = words;
  const [wanted, setWanted] = useState(pageSize);
  const { value, failed } = useAsked(
    `audit ${wanted}`,
    () => trailOf(wanted),
    () => true,
  );
  const { lines, more } = value ?? { lines: [], more: false };
  return (
    <section className="desk-block">
      <h2>{say("desk.audit")}</h2>
      <p className="quiet">{say("desk.auditExplain")}</p>
      {failed === undefined ? null : <p className="field-problem">{refusalWords(failed, words)}</p>}
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
                <td>{auditWords(line, words).did}</td>
                <td>
                  <Subject line={line} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {more ? (
        <button type="button" className="action" onClick={() => setWanted(lines.length + pageSize)}>
          {say("desk.older")}
        </button>
      ) : null}
    </section>
  );
}

/** The newest lines, with whether there are older ones. Asked for one after the other, a line that is added meanwhile is not
 *  shown twice. */
async function trailOf(wanted: number): Promise<Answered<Trail>> {
  const lines = new Map<string, AuditEntry>();
  for (let offset = 0; ; offset += mostAtOnce) {
    const limit = Math.min(mostAtOnce, wanted - offset);
    const answer = await ask(routes.audit, { query: { limit, offset } });
    if (!answer.ok) return answer;
    for (const line of answer.value.items) lines.set(line.id, line);
    const more = answer.value.items.length === limit;
    if (!more || offset + limit >= wanted) return { ...answer, value: { lines: [...lines.values()], more } };
  }
}

/** What it was done to, with a way there while it is there. */
function Subject({ line }: { readonly line: AuditEntry }) {
  const words = useWords();
  const jobs = useJobs().items;
  const customers = useCustomers().items;
  const { kind, name, more } = auditWords(line, words);
  const of = line.subjectKind === "job" ? jobs : line.subjectKind === "customer" ? customers : [];
  const known = of.find(({ id }) => id === line.subjectId)?.name;
  const address = line.subjectKind === "job" ? jobHash(line.subjectId) : customerHash(line.subjectId);
  return (
    <>
      {kind}{" "}
      {known === undefined ? (
        name
      ) : (
        <a className="in-text" href={address}>
          {known}
        </a>
      )}
      {more.length === 0 ? null : <span className="quiet"> · {more.join(" · ")}</span>}
    </>
  );
}
