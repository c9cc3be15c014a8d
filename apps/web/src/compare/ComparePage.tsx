import { describeFinding, type Finding } from "@tidewright/advice";
import { aroundBoth, layoutElevation } from "@tidewright/editor";
import { useEffect, useMemo, useState } from "react";
import "./compare.css";
import { Glyph } from "../bench/Glyph.tsx";
import { useFormat } from "../format/useFormat.ts";
import { compareAddress, designAddress, type RevisionName } from "../state/address.ts";
import { versionTitle } from "../versions/versionTitle.ts";
import { useWords } from "../words/useWords.ts";
import { compareFindings } from "./compareFindings.ts";
import { compareNumbers } from "./compareNumbers.ts";
import { compareParts } from "./compareParts.ts";
import { MarkedDrawing } from "./MarkedDrawing.tsx";
import { PartsThatDiffer } from "./PartsThatDiffer.tsx";
import { type ComparedSide, useCompared } from "./useCompared.ts";

interface Props {
  readonly left: RevisionName;
  readonly right: RevisionName;
}

/** Two revisions side by side: drawings, numbers, findings, and the parts that differ, marked on both. */
export function ComparePage({ left, right }: Props) {
  const { say } = useWords();
  const compared = useCompared(left, right);
  return (
    <div className="compare-page">
      <header className="top-bar">
        <a className="wordmark" href="./" title={say("keeping.toDesk")}>
          Tidewright
        </a>
        <p className="compare-title">{say("keeping.compare")}</p>
        <nav className="tools" aria-label={say("keeping.compare")}>
          <a className="tool" href={compareAddress(right, left)}>
            {say("keeping.compareSwap")}
          </a>
        </nav>
      </header>
      <main>
        {compared.state === "loading" ? <p className="page-wait">{say("keeping.compareLoading")}</p> : null}
        {compared.state === "failed" ? (
          <p className="page-wait" role="alert">
            {say("keeping.compareFailed", { why: compared.why })}
          </p>
        ) : null}
        {compared.state === "there" ? (
          <Both left={compared.left} right={compared.right} played={compared.played} />
        ) : null}
      </main>
    </div>
  );
}

interface BothProps {
  readonly left: ComparedSide;
  readonly right: ComparedSide;
  /** Whether what happens over time is among the findings yet. */
  readonly played: boolean;
}

function Both({ left, right, played }: BothProps) {
  const words = useWords();
  const { say } = words;
  const format = useFormat();
  const [shown, setShown] = useState<string>();
  const parts = useMemo(() => compareParts(left.design, right.design, words), [left, right, words]);
  const numbers = useMemo(
    () => compareNumbers(left.assessment, right.assessment, format, words),
    [left, right, format, words],
  );
  const findings = useMemo(
    () => compareFindings([left.assessment, left.design], [right.assessment, right.design]),
    [left, right],
  );
  const [leftMarks, rightMarks] = useMemo(
    () =>
      (["leftPath", "rightPath"] as const).map((side) =>
        parts.flatMap(({ letter, [side]: path }) => (path === undefined ? [] : [{ path, letter }])),
      ),
    [parts],
  );
  const room = useMemo(
    () =>
      aroundBoth(
        layoutElevation(left.design, left.assessment).bounds,
        layoutElevation(right.design, right.assessment).bounds,
      ),
    [left, right],
  );
  const names = { left: sideName(left, words), right: sideName(right, words) };
  useEffect(() => {
    document.title = `Tidewright: ${say("keeping.compareTitle", names)}`;
    return () => {
      document.title = "Tidewright";
    };
  });
  return (
    <>
      <h1 className="visually-hidden">{say("keeping.compareTitle", names)}</h1>
      <div className="compare-sides">
        {([left, right] as const).map((side, place) => (
          <section key={place === 0 ? "left" : "right"} aria-label={place === 0 ? names.left : names.right}>
            <header className="compare-head">
              <p className="quiet">{say(place === 0 ? "keeping.compareLeft" : "keeping.compareRight")}</p>
              <h2>{place === 0 ? names.left : names.right}</h2>
              <p className="quiet">
                {words.instant(side.entry.at)}
                {side.entry.author === "" ? "" : `, ${side.entry.author}`}
                <span className="compare-open">
                  {" · "}
                  <a href={designAddress(side.of.designId)}>{say("keeping.compareOpen")}</a>
                </span>
              </p>
            </header>
            <MarkedDrawing side={side} marks={(place === 0 ? leftMarks : rightMarks) ?? []} room={room} shown={shown} />
          </section>
        ))}
      </div>
      <PartsThatDiffer parts={parts} names={names} shown={shown} onShow={setShown} />
      <section className="compare-block" aria-labelledby="compare-numbers">
        <h2 id="compare-numbers">{say("keeping.compareNumbers")}</h2>
        <table className="compare-table compare-numbers">
          <thead>
            <tr>
              <th scope="col">{say("keeping.compareNumber")}</th>
              <th scope="col" className="number">
                {names.left}
              </th>
              <th scope="col" className="number">
                {names.right}
              </th>
              <th scope="col" className="number">
                {say("keeping.compareChange")}
              </th>
            </tr>
          </thead>
          <tbody>
            {numbers.map(({ key, label, left: one, right: other, change }) => (
              <tr key={key} data-number={key} data-differs={change === "" ? undefined : ""}>
                <th scope="row">{label}</th>
                <td className="number">{one ?? "–"}</td>
                <td className="number">{other ?? "–"}</td>
                <td className="number">{change === "" ? say("keeping.compareSame") : (change ?? "–")}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <section className="compare-block" aria-labelledby="compare-findings">
        <h2 id="compare-findings">{say("keeping.compareFindings")}</h2>
        {played ? null : (
          <p className="quiet" role="status">
            {say("keeping.comparePlaying")}
          </p>
        )}
        <div className="compare-findings">
          <FindingList title={say("keeping.compareGone")} findings={findings.gone} name="gone" />
          <FindingList title={say("keeping.compareNew")} findings={findings.fresh} name="new" />
          <FindingList title={say("keeping.compareBoth")} findings={findings.same} name="same" />
        </div>
      </section>
    </>
  );
}

interface ListProps {
  readonly title: string;
  readonly findings: readonly Finding[];
  readonly name: string;
}

function FindingList({ title, findings, name }: ListProps) {
  const words = useWords();
  const format = useFormat();
  return (
    <section data-findings={name}>
      <h3>
        {title} <span className="count">{findings.length}</span>
      </h3>
      {findings.length === 0 ? <p className="quiet">{words.say("keeping.compareNoFindings")}</p> : null}
      <ul>
        {findings.map((finding, place) => {
          const { title: what, sentence } = describeFinding(finding, format, words);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: two findings may say the very same of two parts, and none moves
            <li key={`${finding.code} ${finding.at} ${place}`}>
              <Glyph severity={finding.severity} /> <strong>{what}</strong> {sentence}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** What a side is called: the design, and the version where it is not the latest. */
function sideName({ of, designName, entry }: ComparedSide, words: ReturnType<typeof useWords>): string {
  if (of.revision === "latest") return designName;
  return `${designName}, ${versionTitle(entry, words)}`;
}
