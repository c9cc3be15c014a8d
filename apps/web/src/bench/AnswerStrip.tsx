import type { Assessment, DrainState } from "@tidewright/advice";
import { type ReactNode, useEffect, useState } from "react";
import { type ScreenFormat, useFormat } from "../format/useFormat.ts";
import type { ProvenanceId } from "../provenance/provenance.ts";
import { Sourced } from "../provenance/Sourced.tsx";
import { useBench } from "../state/bench.ts";
import { Glyph } from "./Glyph.tsx";

interface FigureProps {
  readonly label: string;
  readonly of: ProvenanceId;
  readonly index?: number;
  readonly value: string;
  readonly note: ReactNode;
  readonly off?: boolean;
}

function Figure({ label, of, index = 0, value, note, off = false }: FigureProps) {
  return (
    <div className="answer-figure" data-figure={of} data-off={off ? "" : undefined}>
      <dt>{label}</dt>
      <dd>
        <Sourced of={of} index={index}>
          {value}
        </Sourced>
        <span className="answer-note">{note}</span>
      </dd>
    </div>
  );
}

/** The drain that is nearest to its limit, by its share of what it carries quietly. */
function hardest(drains: readonly DrainState[]): number {
  let worst = 0;
  for (const [place, drain] of drains.entries()) if (load(drain) > load(drains[worst]!)) worst = place;
  return worst;
}

const load = (drain: DrainState) => (drain.capacity.quiet > 0 ? drain.flow / limitOf(drain) : 0);
/** A siphon is meant to run full, so its limit is the siphon; every other drain should stay quiet. */
const limitOf = (drain: DrainState) =>
  drain.kind === "throttledSiphon" ? drain.capacity.siphon : drain.capacity.quiet;

function drainVerdict(drain: DrainState): { word: string; off: boolean } {
  const { quiet, practice, siphon } = drain.capacity;
  if (drain.flow > siphon) return { word: "beyond a full siphon", off: true };
  if (drain.kind === "throttledSiphon") return { word: "full siphon, quiet", off: false };
  if (drain.flow > practice) return { word: "beyond common practice", off: true };
  if (drain.flow > quiet) return { word: "drags air: noisy", off: true };
  return { word: "quiet", off: false };
}

/** What was asked, answered in one sentence. */
export function AnswerSentence() {
  const assessed = useBench((state) => state.assessed);
  const fault = useBench((state) => state.fault);
  const behind = useBench((state) => state.assessed?.design !== state.history.present);
  const format = useFormat();
  const words =
    fault !== undefined
      ? `The engine stopped: ${fault}. The document is unharmed; undo the last edit or save it.`
      : assessed === undefined
        ? "Solving the system…"
        : sentence(assessed.assessment, format);
  return (
    <section className="answer" aria-label="Answer" aria-busy={behind}>
      <p className="answer-sentence">{words}</p>
      <Spoken words={words} />
    </section>
  );
}

/** Time without change after which the answer is read out [ms]: during a drag nobody wants to hear every step. */
const settled = 700;

/** The answer for a screen reader, once it has settled. */
function Spoken({ words }: { readonly words: string }) {
  const [spoken, setSpoken] = useState("");
  useEffect(() => {
    const timer = setTimeout(() => setSpoken(words), settled);
    return () => clearTimeout(timer);
  }, [words]);
  return (
    <p className="visually-hidden" role="status" aria-live="polite">
      {spoken}
    </p>
  );
}

/** The loop that the answer is about: the return, or the first where none says that it is one. */
const mainLoopOf = (assessment: Assessment): number =>
  Math.max(
    0,
    assessment.loops.findIndex(({ purpose }) => purpose === "return"),
  );

/** The eight numbers behind the sentence. */
export function AnswerFigures() {
  const assessed = useBench((state) => state.assessed);
  const format = useFormat();
  if (assessed === undefined) return null;
  const { assessment } = assessed;
  const mainLoop = mainLoopOf(assessment);
  const loop = assessment.loops[mainLoop];
  const pumps = assessment.pumps.filter((pump) => pump.loop === mainLoop);
  const pumpPlace = Math.max(
    0,
    assessment.pumps.findIndex((pump) => pump.loop === mainLoop),
  );
  const worst = hardest(assessment.drains);
  const drain = assessment.drains[worst];
  const verdict = drain && drainVerdict(drain);
  const { wish, value } = assessment.turnover.return;
  const dangers = assessment.findings.filter(({ severity }) => severity === "danger").length;
  const warnings = assessment.findings.filter(({ severity }) => severity === "warning").length;
  const turnoverOff = wish !== undefined && (value < wish[0] || value > wish[1]);
  const wet = assessment.sump.margin < 0;

  return (
    <section className="answer-numbers" aria-label="The answer in numbers">
      <dl className="answer-figures">
        <Figure
          label="Pump"
          of="pump"
          index={pumpPlace}
          value={nameOf(pumps) ?? "none"}
          note={pumps[0] ? `at ${Math.round(pumps[0].speed * 100)} %` : "choose one below"}
        />
        <Figure
          label="Flow"
          of="flow"
          index={mainLoop}
          value={format(loop?.flow ?? 0, "flow")}
          note={`against ${format(loop?.totalHead ?? 0, "head")}`}
        />
        <Figure
          label="Turnover"
          of="turnover"
          value={format(value, "turnover")}
          off={turnoverOff}
          note={wish ? `wished ${format(wish[0], "turnover")} to ${format(wish[1], "turnover")}` : "nothing wished"}
        />
        {drain && verdict ? (
          <Figure
            label={`Drain: ${drain.name}`}
            of="drain"
            index={worst}
            value={format(drain.flow, "flow")}
            off={verdict.off}
            note={verdict.word}
          />
        ) : null}
        <Figure
          label="Power cut"
          of="powerCut"
          value={
            wet
              ? `${format(-assessment.sump.margin, "volume")} over`
              : `${format(assessment.sump.margin, "volume")} left`
          }
          off={wet}
          note={wet ? "the floor gets wet" : "room in the sump"}
        />
        <Figure
          label="Power"
          of="watts"
          value={format(assessment.power.watts, "power")}
          note={`${format(assessment.power.annualEnergy, "energy")} a year`}
        />
        <Figure
          label="Running cost"
          of="annualCost"
          value={format.sum(assessment.power.annualCost, assessment.power.tariffCurrency)}
          note="a year"
        />
        <Figure
          label="Findings"
          of="dangers"
          value={dangers === 0 ? "no danger" : `${dangers} ${dangers === 1 ? "danger" : "dangers"}`}
          off={dangers > 0}
          note={
            <>
              {dangers > 0 ? <Glyph severity="danger" /> : null} {warnings} {warnings === 1 ? "warning" : "warnings"}
            </>
          }
        />
      </dl>
    </section>
  );
}

/** "Ferrow C40", or "2 × Ferrow C40" for several alike. */
function nameOf(pumps: readonly { readonly label: string }[]): string | undefined {
  const first = pumps[0]?.label;
  if (first === undefined || pumps.length === 1) return first;
  return pumps.every(({ label }) => label === first)
    ? `${pumps.length} × ${first}`
    : pumps.map(({ label }) => label).join(" + ");
}

function sentence(assessment: Assessment, format: ScreenFormat): string {
  const mainLoop = mainLoopOf(assessment);
  const loop = assessment.loops[mainLoop];
  const who = nameOf(assessment.pumps.filter((pump) => pump.loop === mainLoop && pump.ref !== undefined));
  if (loop === undefined || who === undefined) return "No pump chosen yet: “Which pump” below names those that fit.";
  const { value, wish } = assessment.turnover.return;
  const moves = `${who} moves ${format(loop.flow, "flow")} against ${format(loop.totalHead, "head")}`;
  if (wish === undefined) return `${moves}.`;
  const fits = value < wish[0] ? "less than wished" : value > wish[1] ? "more than wished" : "as wished";
  const times = format(value, "turnover").replace(/\/h$/, " times an hour");
  return `${moves}: ${times} through the sump, ${fits}.`;
}
