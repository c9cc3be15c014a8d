import type { RevisionEntry } from "@tidewright/protocol";
import { useState } from "react";
import type { KeeperState } from "../keeping/keeper.ts";
import { useKeeping } from "../keeping/keepingState.ts";
import { useWords } from "../words/useWords.ts";
import { useRevisions } from "./useRevisions.ts";
import { VersionRow } from "./VersionRow.tsx";
import { showVersions } from "./versionsState.ts";
import "./versions.css";

/** The history of the design on the table, newest first: who, when, and what somebody called it. */
export function Versions() {
  const kept = useKeeping((state) => state.kept);
  return kept === undefined ? null : <VersionList kept={kept} />;
}

function VersionList({ kept }: { readonly kept: KeeperState }) {
  const words = useWords();
  const { say } = words;
  const [onlyNamed, setOnlyNamed] = useState(false);
  const { entries, state, why, loadMore, put } = useRevisions(kept.designId);
  const newest = entries[0]?.number;
  const shown = onlyNamed ? entries.filter(({ name }) => name !== null) : entries;
  return (
    <section className="versions" aria-labelledby="versions-title">
      <header className="sheet-head">
        <h2 id="versions-title">{say("keeping.versionsTitle", { name: kept.surroundings.head.name })}</h2>
        <button
          type="button"
          className="icon-button"
          aria-label={say("keeping.versionsClose")}
          onClick={() => showVersions({ open: false })}
        >
          ×
        </button>
      </header>
      <fieldset className="version-filter">
        <legend className="visually-hidden">{say("keeping.versions")}</legend>
        <button type="button" aria-pressed={!onlyNamed} onClick={() => setOnlyNamed(false)}>
          {say("keeping.versionAll")}
        </button>
        <button type="button" aria-pressed={onlyNamed} onClick={() => setOnlyNamed(true)}>
          {say("keeping.versionNamed")}
        </button>
      </fieldset>
      {state === "unreachable" ? <p className="quiet">{say("keeping.versionsAway")}</p> : null}
      {state === "refused" ? <p className="quiet">{say("keeping.versionFailed", { why: why ?? "" })}</p> : null}
      {state !== "loading" && shown.length === 0 ? <p className="quiet">{say("keeping.versionsNone")}</p> : null}
      <ol className="version-list">
        {shown.map((entry: RevisionEntry) => (
          <VersionRow key={entry.number} entry={entry} kept={kept} isNow={entry.number === newest} onNamed={put} />
        ))}
      </ol>
      {state === "more" ? (
        <button type="button" className="action" onClick={loadMore}>
          {say("keeping.versionMore")}
        </button>
      ) : null}
    </section>
  );
}
