import { demoCatalogue, findPump, type PumpRow } from "@tidewright/catalogue";
import type { CatalogueRow } from "@tidewright/protocol";
import { type ReactNode, useCallback, useMemo, useState } from "react";
import { Sheet as Dialog } from "../../bench/Sheet.tsx";
import { useProgramCatalogue } from "../../catalogue/currentCatalogue.ts";
import { mayWork, useSession } from "../../state/session.ts";
import { useWords } from "../../words/useWords.ts";
import { newPumpHash } from "../deskAddress.ts";
import { Missing } from "../Missing.tsx";
import { refusalWords } from "../refusalWords.ts";
import { useTitle } from "../useTitle.ts";
import { nameOf, pumpOf, removePump, tellNews, useOwnPumps, usePumpNews } from "./ownPumps.ts";
import { PumpSheet } from "./PumpSheet.tsx";
import { PumpUseList, pumpUseWords, usePumpUse } from "./PumpUse.tsx";
import { newDraft, readDraft, writeDraft } from "./sheetDrafts.ts";
import "./pumps.css";

/** One pump: the shop's own to change, the program's to look at and to copy. */
export function PumpPage({ pumpId }: { readonly pumpId: string }) {
  const words = useWords();
  const { say } = words;
  const { session } = useSession();
  const own = useOwnPumps();
  const found = own.items.find(({ id }) => id === pumpId);
  // A pump that somebody removes meanwhile stays open as it was, with what is typed into it.
  const [opened, setOpened] = useState<CatalogueRow>();
  if (opened === undefined && found !== undefined && pumpOf(found) !== undefined) setOpened(found);
  // At the price that the shop sells it for.
  const program = findPump(useProgramCatalogue(), pumpId);
  const taken = useTaken(own.items, pumpId);
  const works = mayWork(session);
  const kept = opened ?? found;
  const news = usePumpNews();
  const use = usePumpUse(pumpId);
  if (kept !== undefined) {
    const pump = pumpOf(kept);
    return (
      <Page name={pump === undefined ? pumpId : nameOf(pump)} mark="own" copyOf={works && pump ? pumpId : undefined}>
        {works ? null : <p className="pump-note">{say("pumps.mayNotChange")}</p>}
        {news?.kind === "added" && news.pump.id === pumpId ? (
          <p className="pump-note" role="status">
            {say("pumps.added", { name: nameOf(news.pump) })}
          </p>
        ) : null}
        {pump === undefined ? (
          <p className="field-problem">{say("pumps.unreadable", { id: pumpId })}</p>
        ) : (
          <PumpSheet
            pump={pump}
            version={kept.version}
            draft={pumpId}
            readOnly={!works}
            taken={taken}
            current={found}
          />
        )}
        <PumpUseList use={use} />
        {works ? <Removing row={found ?? kept} pump={pump} used={pumpUseWords(use, words)} /> : null}
      </Page>
    );
  }
  if (program !== undefined)
    return (
      <Page name={nameOf(program)} mark="program" copyOf={works ? pumpId : undefined}>
        <p className="pump-note">{say(works ? "pumps.comesWith" : "pumps.mayNotChange")}</p>
        <PumpSheet key={pumpId} pump={program} version={1} draft="" readOnly taken={taken} current={undefined} />
        <PumpUseList use={use} />
      </Page>
    );
  return (
    <Missing
      missing={whyMissing[own.state]}
      notFound={say("pumps.missing", { id: pumpId })}
      back="#/pumps"
      all={say("pumps.all")}
    />
  );
}

/** Why a pump is not there, by what is known of the list that it should stand in. */
const whyMissing = { loading: undefined, whole: "notFound", unreachable: "unreachable", refused: "refused" } as const;

/** A sheet for a pump that the shop does not have yet, empty or begun as a copy of another. */
export function NewPumpPage({ from }: { readonly from: string | undefined }) {
  const { say } = useWords();
  const { session } = useSession();
  const own = useOwnPumps();
  const taken = useTaken(own.items, "");
  const program = useProgramCatalogue();
  const copied = useMemo(() => {
    if (from === undefined) return undefined;
    const row = own.items.find(({ id }) => id === from);
    return (row && pumpOf(row)) ?? findPump(program, from);
  }, [from, own.items, program]);
  const title = copied === undefined ? say("pumps.newTitle") : say("pumps.copyTitle", { name: nameOf(copied) });
  if (!mayWork(session))
    return (
      <Page name={title} mark={undefined} copyOf={undefined}>
        <p className="pump-note">{say("pumps.mayNotChange")}</p>
      </Page>
    );
  // A copy cannot begin before what is copied is known.
  if (from !== undefined && copied === undefined && own.state === "loading")
    return (
      <p className="quiet desk-wait" role="status">
        {say("desk.loading")}
      </p>
    );
  return (
    <Page name={title} mark={undefined} copyOf={undefined}>
      <PumpSheet
        pump={copied && asCopy(copied, (id) => taken(id) !== undefined)}
        version={0}
        draft={newDraft(from)}
        readOnly={false}
        taken={taken}
        current={undefined}
      />
    </Page>
  );
}

/** The same pump under a short name that is free. */
function asCopy(pump: PumpRow, isTaken: (id: string) => boolean): PumpRow {
  let number = 2;
  while (isTaken(`${pump.id}-${number}`)) number += 1;
  return { ...pump, id: `${pump.id}-${number}` };
}

/** Returns whose pump bears a short name already, other than the one that is open. */
function useTaken(items: readonly CatalogueRow[], open: string): (id: string) => "own" | "program" | undefined {
  return useCallback(
    (id: string) => {
      if (id === open) return undefined;
      if (items.some((row) => row.id === id)) return "own";
      return findPump(demoCatalogue, id) === undefined ? undefined : "program";
    },
    [items, open],
  );
}

interface PageProps {
  readonly name: string;
  readonly mark: "own" | "program" | undefined;
  /** The pump that can be copied from here. */
  readonly copyOf: string | undefined;
  readonly children: ReactNode;
}

function Page({ name, mark, copyOf, children }: PageProps) {
  const { say } = useWords();
  useTitle(name);
  return (
    <article className="pump-page">
      <nav className="sheet-path" aria-label={say("desk.path")}>
        <a href="#/pumps">{say("pumps.title")}</a>
      </nav>
      <header className="pump-title">
        <h1>{name}</h1>
        {mark === undefined ? null : (
          <p className="pump-whose" data-whose={mark}>
            {say(mark === "own" ? "pumps.ownHint" : "pumps.program")}
          </p>
        )}
        {copyOf === undefined ? null : (
          <a className="action" href={newPumpHash(copyOf)}>
            {say("pumps.copy")}
          </a>
        )}
      </header>
      {children}
    </article>
  );
}

interface RemovingProps {
  readonly row: CatalogueRow;
  readonly pump: PumpRow | undefined;
  /** In how many designs it is, where that is known. */
  readonly used: string | undefined;
}

/** The end of a pump: asked once, and undone from the list. */
function Removing({ row, pump, used }: RemovingProps) {
  const words = useWords();
  const { say } = words;
  const [asking, setAsking] = useState(false);
  const [problem, setProblem] = useState<string>();
  const name = pump === undefined ? row.id : nameOf(pump);
  const remove = async () => {
    const answer = await removePump(row.id, row.version);
    if (!answer.ok && !(answer.reason === "refused" && answer.problem.status === 404)) {
      setProblem(refusalWords(answer, words));
      return;
    }
    if (pump !== undefined) tellNews({ kind: "removed", pump });
    // What was typed into it and never saved goes along into the dialog's own warning, and no further.
    if (readDraft(row.id) !== undefined) writeDraft(row.id, undefined);
    location.hash = "#/pumps";
  };
  return (
    <footer className="job-ends">
      <button type="button" className="action action-warn" onClick={() => setAsking(true)}>
        {say("pumps.remove")}
      </button>
      <Dialog
        name="remove-pump"
        title={say("pumps.removeTitle", { name })}
        open={asking}
        onClose={() => setAsking(false)}
      >
        {used === undefined ? null : <p>{used}</p>}
        <p>{say("pumps.removeExplain")}</p>
        {problem === undefined ? null : (
          <p className="field-problem" role="alert">
            {problem}
          </p>
        )}
        <p className="sheet-actions">
          <button type="button" className="action" onClick={() => setAsking(false)}>
            {say("pumps.keepIt")}
          </button>
          <button type="button" className="action action-warn" onClick={() => void remove()}>
            {say("pumps.removeNow")}
          </button>
        </p>
      </Dialog>
    </footer>
  );
}
