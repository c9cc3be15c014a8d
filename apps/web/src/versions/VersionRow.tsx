import { type RevisionEntry, routes } from "@tidewright/protocol";
import { type FormEvent, lazy, Suspense, useState } from "react";
import { ask } from "../api/ask.ts";
import type { KeeperState } from "../keeping/keeper.ts";
import { authorWords } from "../keeping/openKept.ts";
import { reasonOf } from "../keeping/reasonOf.ts";
import { compareAddress } from "../state/address.ts";
import { say as sayOnBench, useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { goBackTo, lookAt } from "./versionActions.ts";
import { useVersions } from "./versionsState.ts";
import { versionTitle } from "./versionTitle.ts";

const NewVariant = lazy(async () => ({ default: (await import("../keeping/NewVariant.tsx")).NewVariant }));

interface Props {
  readonly entry: RevisionEntry;
  readonly kept: KeeperState;
  /** Whether this is the newest one. */
  readonly isNow: boolean;
  readonly onNamed: (entry: RevisionEntry) => void;
}

/** One version, and what can be done with it. */
export function VersionRow({ entry, kept, isNow, onNamed }: Props) {
  const words = useWords();
  const { say, instant } = words;
  const looked = useVersions((state) => state.looking?.entry.number === entry.number);
  const mayChange = useBench((state) => state.lookOnly === undefined);
  const [does, setDoes] = useState<"naming" | "variant">();
  const present = { designId: kept.designId, revision: "latest" as const };
  return (
    <li className="version" data-version={entry.number} data-looked={looked ? "" : undefined}>
      <p className="version-title">
        {versionTitle(entry, words)}
        {isNow ? <span className="version-now"> {say("keeping.versionNow")}</span> : null}
      </p>
      <p className="quiet">
        {instant(entry.at)}, {authorWords(entry.author)}
      </p>
      {does === "naming" ? (
        <NameForm entry={entry} onNamed={onNamed} onClose={() => setDoes(undefined)} />
      ) : (
        <p className="version-actions">
          <button type="button" aria-pressed={looked} onClick={() => void lookAt(entry, looked)}>
            {say("keeping.versionLook")}
          </button>
          {mayChange ? (
            <button type="button" onClick={() => setDoes("naming")}>
              {say("keeping.versionNameIt")}
            </button>
          ) : null}
          {mayChange && !isNow ? (
            <button type="button" onClick={() => void goBackTo(entry)}>
              {say("keeping.versionBack")}
            </button>
          ) : null}
          {mayChange ? (
            <button type="button" onClick={() => setDoes("variant")}>
              {say("keeping.versionVariant")}
            </button>
          ) : null}
          {isNow ? null : (
            <a href={compareAddress({ designId: entry.designId, revision: entry.number }, present)}>
              {say("keeping.versionCompare")}
            </a>
          )}
        </p>
      )}
      {does === "variant" ? (
        <Suspense fallback={null}>
          <NewVariant kept={kept} revision={entry.number} onClose={() => setDoes(undefined)} />
        </Suspense>
      ) : null}
    </li>
  );
}

interface NameProps {
  readonly entry: RevisionEntry;
  readonly onNamed: (entry: RevisionEntry) => void;
  readonly onClose: () => void;
}

function NameForm({ entry, onNamed, onClose }: NameProps) {
  const { say } = useWords();
  const [name, setName] = useState(entry.name ?? "");
  const give = async (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() === "") return;
    const answer = await ask(routes.nameRevision, {
      params: { designId: entry.designId, number: String(entry.number) },
      body: { name: name.trim() },
    });
    if (!answer.ok) {
      sayOnBench(say("keeping.versionFailed", { why: reasonOf(answer) }));
      return;
    }
    onNamed(answer.value);
    onClose();
  };
  return (
    <form className="version-naming" onSubmit={give}>
      <input
        className="text-input"
        aria-label={say("keeping.versionNameLabel", { number: entry.number })}
        value={name}
        maxLength={200}
        // biome-ignore lint/a11y/noAutofocus: the field stands where the button was that asked for it
        autoFocus
        onChange={({ target }) => setName(target.value)}
        onKeyDown={({ key }) => (key === "Escape" ? onClose() : undefined)}
      />
      <button type="submit" className="action action-strong">
        {say("keeping.versionNameKeep")}
      </button>
      <button type="button" className="action" onClick={onClose}>
        {say("keeping.cancel")}
      </button>
    </form>
  );
}
