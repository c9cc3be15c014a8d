import { type SortingState, useTable } from "@tanstack/react-table";
import { describeReason, type Ranking } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { Fragment, memo, useMemo, useState } from "react";
import { useFormat } from "../format/useFormat.ts";
import { presentDesign, rankLoop, useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { rankingColumns, rankingFeatures } from "./rankingColumns.tsx";
import { takePump } from "./usePump.ts";

const shortList = 12;

/** Every pump and pair that serves the loop, best first; sortable; those that do not, with the cause. */
export function RankingTable() {
  const { say } = useWords();
  const ranked = useBench((state) => state.ranking);
  const stale = useBench((state) => state.ranking?.design !== state.history.present);
  const present = useBench((state) => pumpsOf(state.history.present, state.ranking?.ranking.loop ?? 0));
  if (ranked === undefined) return <p className="quiet">{say("bench.ranking.trying")}</p>;
  return (
    <div className="ranking" data-stale={stale ? "" : undefined} aria-busy={stale}>
      <RankingHead ranking={ranked.ranking} />
      <RankedPumps ranking={ranked.ranking} present={present} />
      <Rejected />
    </div>
  );
}

const pumpsOf = (design: Design, loop: number): string =>
  design.loops[loop]?.pumps.map(({ ref }) => ref ?? "").join("+") ?? "";

const RankingHead = memo(function RankingHead({ ranking }: { readonly ranking: Ranking }) {
  const loop = useBench((state) => state.rankedLoop);
  const names = useBench((state) => state.history.present.loops.map(({ name }) => name).join("\n")).split("\n");
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  // What is still lacking may begin at nothing too, and is wished all the same.
  const nothingWished = ranking.candidates.some(({ reasons }) => reasons.some(({ code }) => code === "no-wish"));
  return (
    <div className="ranking-head">
      {names.length > 1 ? (
        <label className="adder">
          <span>{say("bench.ranking.forLoop")}</span>
          <select className="select" value={loop} onChange={(event) => rankLoop(Number(event.target.value))}>
            {names.map((name, place) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two loops may share a name; their place tells them apart
              <option key={place} value={place}>
                {name}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      <p className="quiet">
        {say(nothingWished ? "bench.ranking.headFree" : "bench.ranking.head", {
          tried: ranking.considered,
          fit: ranking.candidates.length,
          low: format(ranking.wish.low, "flow"),
          high: format(ranking.wish.high, "flow"),
          aim: format(ranking.aim, "flow"),
        })}
      </p>
      {ranking.currencies.prices === ranking.currencies.running ? null : (
        <p className="quiet">
          {say("bench.ranking.twoCurrencies", { one: ranking.currencies.prices, other: ranking.currencies.running })}
        </p>
      )}
    </div>
  );
});

interface RankedProps {
  readonly ranking: Ranking;
  /** Ids of the pumps in the loop, joined by "+". */
  readonly present: string;
}

// The table is long and a drag changes none of it: it renders again only with a new ranking.
const RankedPumps = memo(function RankedPumps({ ranking, present }: RankedProps) {
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  const [sorting, setSorting] = useState<SortingState>([]);
  const [all, setAll] = useState(false);
  const { prices, running } = ranking.currencies;
  const columns = useMemo(() => rankingColumns(format, words, { prices, running }), [format, words, prices, running]);
  const data = useMemo(() => [...ranking.candidates], [ranking]);
  const table = useTable({
    features: rankingFeatures,
    columns,
    data,
    state: { sorting },
    onSortingChange: setSorting,
    getRowId: (candidate) => candidate.pumpIds.join("+"),
  });
  const rows = table.getRowModel().rows;
  const shown = all ? rows : rows.slice(0, shortList);
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="table-scroll" tabIndex={0} aria-label={say("bench.ranking.label")}>
        <table className="ranking-table">
          <thead>
            {table.getHeaderGroups().map((group) => (
              <tr key={group.id}>
                <th scope="col">
                  <span className="visually-hidden">{say("bench.ranking.useIt")}</span>
                </th>
                {group.headers.map((header) => {
                  const sorted = header.column.getIsSorted();
                  return (
                    <th
                      key={header.id}
                      scope="col"
                      className={header.column.id === "label" ? undefined : "number"}
                      aria-sort={sorted === "asc" ? "ascending" : sorted === "desc" ? "descending" : "none"}
                    >
                      <button
                        type="button"
                        className="sort"
                        onClick={() =>
                          header.column.toggleSorting(sorted === "asc" ? true : sorted === "desc" ? undefined : false)
                        }
                      >
                        <table.FlexRender header={header} />
                        <span className="sort-mark" aria-hidden="true">
                          {sorted === "asc" ? "▲" : sorted === "desc" ? "▼" : ""}
                        </span>
                      </button>
                    </th>
                  );
                })}
              </tr>
            ))}
          </thead>
          <tbody>
            {shown.map((row) => {
              const candidate = row.original;
              const inUse = candidate.pumpIds.join("+") === present;
              return (
                <Fragment key={row.id}>
                  <tr data-pump={row.id} data-in-use={inUse ? "" : undefined}>
                    <td className="use-cell">
                      <button
                        type="button"
                        className="action"
                        onClick={() => takePump(presentDesign(), ranking, candidate)}
                        aria-label={say(inUse ? "bench.ranking.inUseNamed" : "bench.ranking.useNamed", {
                          pump: candidate.label,
                        })}
                      >
                        {say(inUse ? "bench.ranking.inUse" : "bench.ranking.use")}
                      </button>
                    </td>
                    {row.getAllCells().map((cell) => (
                      <td key={cell.id} className={cell.column.id === "label" ? "pump-cell" : "number"}>
                        <table.FlexRender cell={cell} />
                        {cell.column.id === "label" && candidate.paretoFront ? (
                          <span className="pareto" title={say("bench.ranking.pareto")}>
                            {" "}
                            ◆<span className="visually-hidden"> {say("bench.ranking.paretoHeard")}</span>
                          </span>
                        ) : null}
                      </td>
                    ))}
                  </tr>
                  <tr className="why-row" data-in-use={inUse ? "" : undefined}>
                    <td />
                    <td className="why" colSpan={row.getAllCells().length}>
                      <p>{candidate.reasons.map((reason) => describeReason(reason, format, words)).join(" · ")}</p>
                    </td>
                  </tr>
                </Fragment>
              );
            })}
          </tbody>
        </table>
      </section>
      {rows.length > shortList ? (
        <button type="button" className="action" aria-expanded={all} onClick={() => setAll(!all)}>
          {all
            ? say("bench.ranking.firstOnly", { count: shortList })
            : say("bench.ranking.all", { count: rows.length })}
        </button>
      ) : null}
    </>
  );
});

/** Pumps that do not fit, each with every cause, and a search over both. */
const Rejected = memo(function Rejected() {
  const rejections = useBench((state) => state.ranking?.ranking.rejections);
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  const [sought, setSought] = useState("");
  if (rejections === undefined || rejections.length === 0) return null;
  const lines = rejections.map(({ pumpIds, label, causes }) => ({
    id: pumpIds.join("+"),
    label,
    causes: causes.map((cause) => describeReason(cause, format, words)).join("; "),
  }));
  const found = lines.filter(({ label, causes }) => `${label} ${causes}`.toLowerCase().includes(sought.toLowerCase()));
  return (
    <details className="rejected">
      <summary>{say("bench.ranking.rejected", { count: rejections.length })}</summary>
      <label className="adder">
        <span>{say("bench.ranking.search")}</span>
        <input
          className="text-input"
          type="search"
          value={sought}
          onChange={(event) => setSought(event.target.value)}
        />
      </label>
      <p className="quiet" role="status">
        {say("bench.ranking.found", { found: found.length, all: lines.length })}
      </p>
      <ul className="rejected-list">
        {found.map(({ id, label, causes }) => (
          <li key={id}>
            <span className="rejected-name">{label}</span> <span>{causes}</span>
          </li>
        ))}
      </ul>
    </details>
  );
});
