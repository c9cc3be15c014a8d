import { describeFinding, describeLever, describeSource, type Finding, type Lever } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { useMemo, useState } from "react";
import { ShowFinding } from "../film/ShowFinding.tsx";
import { useFormat } from "../format/useFormat.ts";
import { select, useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { EffectTable } from "./EffectTable.tsx";
import { Glyph } from "./Glyph.tsx";

/** What the designer should know, in order of danger, each pointing at its part and offering the lever that helps. */
export function Findings() {
  const { say } = useWords();
  const assessed = useBench((state) => state.assessed);
  const levers = useBench((state) => state.levers);
  const selection = useBench((state) => state.selection);
  const findings = assessed?.assessment.findings ?? [];
  return (
    <section className="findings" aria-labelledby="findings-title" id="findings">
      <h2 className="section-title" id="findings-title">
        {say("bench.findings.title")} <span className="count">{findings.length}</span>
      </h2>
      {findings.length === 0 && assessed ? <p className="quiet">{say("bench.findings.none")}</p> : null}
      <ol className="finding-list">
        {findings.map((finding, place) => (
          <FindingRow
            key={`${finding.code} ${finding.at} ${String(finding.data?.["name"] ?? "")}`}
            finding={finding}
            number={place + 1}
            selected={selection === finding.at}
            base={levers?.design}
            lever={levers?.levers.find((lever) =>
              lever.cures.some(({ code, at }) => code === finding.code && at === finding.at),
            )}
          />
        ))}
      </ol>
    </section>
  );
}

interface RowProps {
  readonly finding: Finding;
  readonly number: number;
  readonly selected: boolean;
  readonly lever: Lever | undefined;
  /** The document that the lever changes. */
  readonly base: Design | undefined;
}

function FindingRow({ finding, number, selected, lever, base }: RowProps) {
  const format = useFormat();
  const [trying, setTrying] = useState(false);
  const words = useWords();
  const { say } = words;
  const told = useMemo(() => describeFinding(finding, format, words), [finding, format, words]);
  return (
    <li
      className={`finding finding-${finding.severity}`}
      data-code={finding.code}
      data-selected={selected ? "" : undefined}
    >
      <button type="button" className="finding-point" onClick={() => select(finding.at)}>
        <span className="finding-mark">
          <Glyph severity={finding.severity} />
          <span className="finding-number">{number}</span>
        </span>
        <span className="finding-title">
          <span className="finding-severity">{say(`bench.severity.${finding.severity}`)}</span> {told.title}
        </span>
      </button>
      <div className="finding-words">
        <p>{told.sentence}</p>
        {told.fix === "" ? null : <p className="finding-fix">{told.fix}</p>}
        {told.caution === undefined ? null : <p className="caution">{told.caution}</p>}
        <p className="finding-source">
          {say("bench.findings.limit", { source: describeSource(finding.source, words) })}
        </p>
        <ShowFinding finding={finding} />
        {lever === undefined ? null : (
          <>
            <button type="button" className="action" aria-expanded={trying} onClick={() => setTrying(!trying)}>
              {say("bench.findings.try", { lever: describeLever(lever, words) })}
            </button>
            {trying && base !== undefined ? <EffectTable lever={lever} base={base} /> : null}
          </>
        )}
      </div>
    </li>
  );
}
