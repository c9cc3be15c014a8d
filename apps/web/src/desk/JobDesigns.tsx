import { type DesignHead, type Job, type RevisionEntry, routes } from "@tidewright/protocol";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { compareAddress, designAddress } from "../state/address.ts";
import { useWords } from "../words/useWords.ts";
import { authorWords } from "./authorWords.ts";
import { KeptChoice } from "./KeptField.tsx";
import { NameForm } from "./NameForm.tsx";
import { namedVersions } from "./namedVersions.ts";
import { refusalWords } from "./refusalWords.ts";
import { useAsked } from "./useAsked.ts";
import { whenWords } from "./whenWords.ts";

interface Props {
  readonly job: Job;
  readonly readOnly: boolean;
}

/** Designs and variants of a job: open, vary, name a version, lay two side by side. */
export function JobDesigns({ job, readOnly }: Props) {
  const words = useWords();
  const { say } = words;
  const { value, failed, again } = useAsked(
    job.id,
    () => ask(routes.designsOfJob, { params: { jobId: job.id } }),
    (change) => change.kind === "design" && change.jobId === job.id,
  );
  const heads = value?.items ?? [];
  return (
    <section className="desk-block">
      <div className="block-head">
        <h2>{say("desk.designs")}</h2>
        {readOnly ? null : (
          <a className="action" href={`./#/start/${encodeURIComponent(job.id)}`}>
            {say("desk.newDesign")}
          </a>
        )}
      </div>
      {failed !== undefined && value === undefined ? (
        <p className="field-problem">{refusalWords(failed, words)}</p>
      ) : null}
      {value !== undefined && heads.length === 0 ? <p className="quiet">{say("desk.noDesigns")}</p> : null}
      <ol className="designs">
        {heads.map((head) => (
          <DesignRow key={head.id} head={head} heads={heads} readOnly={readOnly} onChanged={again} />
        ))}
      </ol>
      {heads.length > 1 ? <CompareTwo heads={heads} /> : null}
    </section>
  );
}

interface RowProps {
  readonly head: DesignHead;
  readonly heads: readonly DesignHead[];
  readonly readOnly: boolean;
  readonly onChanged: () => Promise<void>;
}

function DesignRow({ head, heads, readOnly, onChanged }: RowProps) {
  const words = useWords();
  const { say } = words;
  const [asking, setAsking] = useState(false);
  const from = head.variantOf && heads.find(({ id }) => id === head.variantOf?.designId);
  const vary = async (name: string) => {
    const answer = await ask(routes.createVariant, { params: { designId: head.id }, body: { name } });
    if (!answer.ok) return refusalWords(answer, words);
    setAsking(false);
    await onChanged();
    return undefined;
  };
  return (
    <li className="design" data-design={head.id}>
      <a className="design-open" href={designAddress(head.id)}>
        <span className="design-name">{head.name}</span>
        <span className="quiet">
          {from
            ? say("desk.variantOf", { name: from.name, revision: head.variantOf?.revision ?? 1 })
            : head.variantOf
              ? say("desk.variantOfOther")
              : say("desk.firstDesign")}
          {" · "}
          {say("desk.revision", { revision: head.revision })}
          {" · "}
          {whenWords(head.updatedAt, new Date(), words)}
        </span>
      </a>
      {readOnly ? null : (
        <button type="button" className="tool" onClick={() => setAsking(true)}>
          {say("desk.vary")}
        </button>
      )}
      <Versions head={head} readOnly={readOnly} onChanged={onChanged} />
      <Sheet
        name={`vary-${head.id}`}
        title={say("desk.varyTitle", { name: head.name })}
        open={asking}
        onClose={() => setAsking(false)}
      >
        <p className="quiet">{say("desk.varyExplain")}</p>
        <NameForm
          label={say("desk.variantName")}
          initial={say("desk.variantDefault", { name: head.name })}
          done={say("desk.vary")}
          onDone={vary}
        />
      </Sheet>
    </li>
  );
}

/** The versions somebody gave a name to, and a name for the present one. */
function Versions({ head, readOnly, onChanged }: Omit<RowProps, "heads">) {
  const { say } = useWords();
  const [open, setOpen] = useState(false);
  return (
    <details className="versions" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say("desk.versions")}</summary>
      {open ? <VersionList head={head} readOnly={readOnly} onChanged={onChanged} /> : null}
    </details>
  );
}

function VersionList({ head, readOnly, onChanged }: Omit<RowProps, "heads">) {
  const words = useWords();
  const { say } = words;
  const { value, failed, again } = useAsked(
    `${head.id} ${head.revision}`,
    () => namedVersions(head.id),
    (change) => change.kind === "design" && change.id === head.id,
  );
  const [said, setSaid] = useState("");
  const named = value ?? [];
  const nameIt = async (name: string) => {
    const answer = await ask(routes.nameRevision, {
      params: { designId: head.id, number: String(head.revision) },
      body: { name },
    });
    if (!answer.ok) return refusalWords(answer, words);
    setSaid(say("desk.versionNamed", { name }));
    await again();
    return undefined;
  };
  const vary = async (version: RevisionEntry) => {
    const answer = await ask(routes.createVariant, {
      params: { designId: head.id },
      body: { name: `${head.name}: ${version.name}`.slice(0, 200), revision: version.number },
    });
    setSaid(answer.ok ? say("desk.variantMade", { name: answer.value.name }) : refusalWords(answer, words));
    if (answer.ok) await onChanged();
  };
  return (
    <div className="version-list">
      {failed === undefined ? null : <p className="field-problem">{refusalWords(failed, words)}</p>}
      {value !== undefined && named.length === 0 ? <p className="quiet">{say("desk.noVersions")}</p> : null}
      <ul>
        {named.map((version) => (
          <li key={version.number} className="version">
            <span className="version-name">{version.name}</span>
            <span className="quiet">
              {say("desk.revision", { revision: version.number })} · {authorWords(version.author, words)} ·{" "}
              {whenWords(version.at, new Date(), words)}
            </span>
            <span className="version-hands">
              <a
                className="tool"
                href={compareAddress(
                  { designId: head.id, revision: version.number },
                  { designId: head.id, revision: "latest" },
                )}
              >
                {say("desk.compareWithLatest")}
              </a>
              {readOnly ? null : (
                <button type="button" className="tool" onClick={() => void vary(version)}>
                  {say("desk.asVariant")}
                </button>
              )}
            </span>
          </li>
        ))}
      </ul>
      {readOnly ? null : (
        <NameForm
          label={say("desk.nameVersion", { revision: head.revision })}
          initial=""
          done={say("desk.keepName")}
          onDone={nameIt}
        />
      )}
      <p className="quiet" role="status">
        {said}
      </p>
    </div>
  );
}

function CompareTwo({ heads }: { readonly heads: readonly DesignHead[] }) {
  const { say } = useWords();
  const [left, setLeft] = useState(heads[0]?.id ?? "");
  const [right, setRight] = useState(heads[1]?.id ?? "");
  const options = heads.map(({ id, name }) => (
    <option key={id} value={id}>
      {name}
    </option>
  ));
  return (
    <div className="compare-two">
      <KeptChoice label={say("desk.compareLeft")} value={left} onChange={setLeft}>
        {options}
      </KeptChoice>
      <KeptChoice label={say("desk.compareRight")} value={right} onChange={setRight}>
        {options}
      </KeptChoice>
      <a
        className="action"
        href={compareAddress({ designId: left, revision: "latest" }, { designId: right, revision: "latest" })}
      >
        {say("desk.compare")}
      </a>
    </div>
  );
}
