import type { Catalogue, PumpRow } from "@tidewright/catalogue";
import type { CatalogueRow } from "@tidewright/protocol";
import type { Words } from "@tidewright/words";
import { useDeferredValue, useMemo, useState } from "react";
import { useProgramCatalogue } from "../../catalogue/currentCatalogue.ts";
import { useFormat } from "../../format/useFormat.ts";
import { mayWork, useSession } from "../../state/session.ts";
import { useWords } from "../../words/useWords.ts";
import { newPumpHash, pumpHash } from "../deskAddress.ts";
import { ListPage } from "../list/ListPage.tsx";
import { SearchedList } from "../list/SearchedList.tsx";
import { useNarrow } from "../list/useNarrow.ts";
import { foldedOnce, matchWords } from "../matchWords.ts";
import { nameOf, pumpOf, removePump, useOwnPumps } from "./ownPumps.ts";
import { PumpNewsLine } from "./PumpNewsLine.tsx";
import { currency } from "./pumpForm.ts";
import { reachOf, type SharedScale, sharedScale, smallPath } from "./pumpPlot.ts";
import { placeWords } from "./pumpValues.ts";
import { draftIds } from "./sheetDrafts.ts";
import "./pumps.css";

/** A pump in the list, whoever it belongs to. */
interface Listed {
  readonly id: string;
  readonly pump: PumpRow;
  readonly own: boolean;
}

/** Height of one row [px], as pumps.css has it. */
const rowHeight = { narrow: 96, wide: 60 };
/** Size of the small curve [px]. */
const small = { width: 96, height: 44 };

/** What was looked for stays while the page does. */
let lastSearch = "";

/** Every pump that a design can choose from: the shop's own first, then those that come with the program. */
export function PumpList() {
  const words = useWords();
  const { say } = words;
  const format = useFormat();
  const own = useOwnPumps();
  const { session } = useSession();
  const works = mayWork(session);
  const narrow = useNarrow();
  const [search, setSearch] = useState(lastSearch);
  lastSearch = search;
  const looked = useDeferredValue(search);
  const program = useProgramCatalogue();
  const all = useMemo(() => listed(own.items, program, words), [own.items, program, words]);
  const searched = useMemo(
    () =>
      foldedOnce<Listed>(
        ({ pump, own: mine }) =>
          `${pump.maker} ${pump.model} ${pump.id} ${placeWords(pump, words)} ${say(mine ? "pumps.own" : "pumps.program")}`,
      ),
    [words, say],
  );
  const shown = useMemo(() => matchWords(all, searched, looked), [all, searched, looked]);
  const scale = useMemo(() => sharedScale(shown.map(({ pump }) => pump)), [shown]);
  const drafts = useMemo(() => draftIds(), []);
  const mine = all.filter((each) => each.own).length;
  return (
    <ListPage
      name="pumps"
      title={say("pumps.title")}
      state={own.state}
      hands={<Hands works={works} waiting={drafts.has("+")} />}
      instead={null}
    >
      <PumpNewsLine works={works} />
      <Unreadable rows={own.items} works={works} />
      {own.state === "unreachable" && own.items.length === 0 ? (
        <p className="pump-note">{say("pumps.nothingKept")}</p>
      ) : own.state === "whole" && mine === 0 && works ? (
        <p className="pump-note">{say("pumps.noneOwn")}</p>
      ) : null}
      <SearchedList
        list={{ items: all, state: own.state }}
        search={search}
        searchHint={say("pumps.searchHint")}
        onSearch={setSearch}
        count={`${say("pumps.count", { shown: shown.length, total: all.length, own: shown.filter((each) => each.own).length })}. ${say("pumps.scale", { head: format(scale.head, "head"), flow: format(scale.flow, "flow") })}`}
        shown={shown}
        height={narrow ? rowHeight.narrow : rowHeight.wide}
        head={<Head />}
        row={(item, index) => (
          <PumpLine item={item} index={index} scale={scale} waiting={item.own && drafts.has(item.id)} />
        )}
      />
    </ListPage>
  );
}

function listed(rows: readonly CatalogueRow[], program: Catalogue, { language }: Words): readonly Listed[] {
  const own = rows.flatMap((row): Listed[] => {
    const pump = pumpOf(row);
    return pump === undefined ? [] : [{ id: row.id, pump, own: true }];
  });
  own.sort((a, b) => nameOf(a.pump).localeCompare(nameOf(b.pump), language, { numeric: true }));
  const taken = new Set(own.map(({ id }) => id));
  const fromProgram = program.pumps.map((pump): Listed => ({ id: pump.id, pump, own: false }));
  // A pump of the program that the shop has one of its own for stands nowhere else any more.
  return [...own, ...fromProgram.filter(({ id }) => !taken.has(id))];
}

function Hands({ works, waiting }: { readonly works: boolean; readonly waiting: boolean }) {
  const { say } = useWords();
  return (
    <div className="list-actions">
      {works ? (
        <a className="action action-strong" href={newPumpHash()}>
          {say("pumps.new")}
          {waiting ? ` (${say("pumps.draft")})` : ""}
        </a>
      ) : null}
      <a className="action" href="#/pumpTable">
        {say("pumps.table")}
      </a>
    </div>
  );
}

function Head() {
  const { say } = useWords();
  const format = useFormat();
  return (
    <div className="row row-head pump-row" aria-hidden="true">
      <span />
      <span className="row-name">{say("pumps.column.pump")}</span>
      <span>{say("pumps.column.place")}</span>
      <span className="number">{say("pumps.column.head", { unit: format.label("head") })}</span>
      <span className="number">{say("pumps.column.flow", { unit: format.label("flow") })}</span>
      <span className="number">{say("pumps.column.watts")}</span>
      <span className="number">{say("pumps.column.sound")}</span>
      <span className="number">{say("pumps.column.price")}</span>
    </div>
  );
}

interface LineProps {
  readonly item: Listed;
  readonly index: number;
  readonly scale: SharedScale;
  readonly waiting: boolean;
}

function PumpLine({ item: { pump, own }, index, scale, waiting }: LineProps) {
  const words = useWords();
  const { say } = words;
  const format = useFormat();
  const { head, flow } = reachOf(pump);
  return (
    <a
      className="row pump-row"
      href={pumpHash(pump.id)}
      data-row={index}
      data-pump={pump.id}
      data-own={own ? "" : undefined}
    >
      <svg
        className="small-curve"
        viewBox={`0 0 ${small.width} ${small.height}`}
        width={small.width}
        height={small.height}
        role="img"
        aria-label={say("pumps.smallCurve", { head: format(head, "head"), flow: format(flow, "flow") })}
      >
        <path className="small-axis" d={`M0.5,0V${small.height - 0.5}H${small.width}`} />
        <path className="small-line" d={smallPath(pump, scale, small.width - 2, small.height - 3)} />
      </svg>
      <span className="row-name">
        <span className="pump-name">{nameOf(pump)}</span>
        {own ? <span className="pump-mark">{say("pumps.own")}</span> : null}
        {waiting ? <span className="pump-mark pump-mark-draft">{say("pumps.draft")}</span> : null}
      </span>
      <span className="pump-place">{placeWords(pump, words)}</span>
      <span className="pump-figures">
        <span className="number" data-unit={format.label("head")}>
          {format.bare(head, "head")}
        </span>
        <span className="number" data-unit={format.label("flow")}>
          {format.bare(flow, "flow")}
        </span>
        <span className="number" data-unit="W">
          {format.bare(pump.ratedPower, "power")}
        </span>
        <span className="number" data-unit="dB(A)">
          {format.bare(pump.soundLevel, "soundLevel")}
        </span>
      </span>
      <span className="number pump-price">{format.sum(pump.price, currency)}</span>
    </a>
  );
}

/** Rows of an old backup that hold no pump: named, so that somebody can put an end to them. */
function Unreadable({ rows, works }: { readonly rows: readonly CatalogueRow[]; readonly works: boolean }) {
  const { say } = useWords();
  const bad = rows.filter((row) => pumpOf(row) === undefined);
  if (bad.length === 0) return null;
  return (
    <ul className="plain-list pump-unreadable">
      {bad.map((row) => (
        <li key={row.id}>
          <span className="field-problem">{say("pumps.unreadable", { id: row.id })}</span>
          {works ? (
            <button type="button" className="tool" onClick={() => void removePump(row.id, row.version)}>
              {say("pumps.removeUnreadable")}
            </button>
          ) : null}
        </li>
      ))}
    </ul>
  );
}
