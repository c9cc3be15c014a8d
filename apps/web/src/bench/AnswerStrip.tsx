import type { Assessment, DrainState } from "@tidewright/advice";
import type { MessageKey, Words } from "@tidewright/words";
import { type ReactNode, useEffect, useState } from "react";
import { type ScreenFormat, useFormat } from "../format/useFormat.ts";
import type { ProvenanceId } from "../provenance/provenance.ts";
import { Sourced } from "../provenance/Sourced.tsx";
import { useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
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

function drainVerdict(drain: DrainState): { word: MessageKey; off: boolean } {
  const { quiet, practice, siphon } = drain.capacity;
  if (drain.flow > siphon) return { word: "bench.drain.beyondSiphon", off: true };
  if (drain.kind === "throttledSiphon") return { word: "bench.drain.fullSiphon", off: false };
  if (drain.flow > practice) return { word: "bench.drain.beyondPractice", off: true };
  if (drain.flow > quiet) return { word: "bench.drain.noisy", off: true };
  return { word: "bench.drain.quiet", off: false };
}

/** What was asked, answered in one sentence. */
export function AnswerSentence() {
  const assessed = useBench((state) => state.assessed);
  const fault = useBench((state) => state.fault);
  const behind = useBench((state) => state.assessed?.design !== state.history.present);
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  const told =
    fault !== undefined
      ? say("bench.answer.fault", { fault })
      : assessed === undefined
        ? say("bench.answer.solving")
        : sentence(assessed.assessment, format, words);
  return (
    <section className="answer" aria-label={say("bench.answer")} aria-busy={behind}>
      <p className="answer-sentence">{told}</p>
      <Spoken words={told} />
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
  // What is not played yet may still flood the floor.
  const whole = useBench((state) => state.overTimeOf === state.assessed?.design);
  const format = useFormat();
  const { say } = useWords();
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
    <section className="answer-numbers" aria-label={say("bench.answer.numbers")}>
      <dl className="answer-figures">
        <Figure
          label={say("bench.figure.pump")}
          of="pump"
          index={pumpPlace}
          value={nameOf(pumps) ?? say("bench.figure.none")}
          note={
            pumps[0]
              ? say("bench.figure.speed", { share: format.perCent(pumps[0].speed) })
              : say("bench.figure.chooseBelow")
          }
        />
        <Figure
          label={say("bench.figure.flow")}
          of="flow"
          index={mainLoop}
          value={format(loop?.flow ?? 0, "flow")}
          note={say("bench.figure.against", { head: format(loop?.totalHead ?? 0, "head") })}
        />
        <Figure
          label={say("bench.figure.turnover")}
          of="turnover"
          value={format(value, "turnover")}
          off={turnoverOff}
          note={
            wish
              ? say("bench.figure.wished", { low: format(wish[0], "turnover"), high: format(wish[1], "turnover") })
              : say("bench.figure.nothingWished")
          }
        />
        {drain && verdict ? (
          <Figure
            label={say("bench.figure.drain", { name: drain.name })}
            of="drain"
            index={worst}
            value={format(drain.flow, "flow")}
            off={verdict.off}
            note={say(verdict.word)}
          />
        ) : null}
        <Figure
          label={say("bench.figure.powerCut")}
          of="powerCut"
          value={
            wet
              ? say("bench.figure.over", { volume: format(-assessment.sump.margin, "volume") })
              : say("bench.figure.left", { volume: format(assessment.sump.margin, "volume") })
          }
          off={wet}
          note={wet ? say("bench.figure.floorWet") : say("bench.figure.roomInSump")}
        />
        <Figure
          label={say("bench.figure.power")}
          of="watts"
          value={format(assessment.power.watts, "power")}
          note={say("bench.figure.energyAYear", { energy: format(assessment.power.annualEnergy, "energy") })}
        />
        <Figure
          label={say("bench.figure.runningCost")}
          of="annualCost"
          value={format.sum(assessment.power.annualCost, assessment.power.tariffCurrency)}
          note={say("bench.figure.aYear")}
        />
        <Figure
          label={say("bench.figure.findings")}
          of="dangers"
          value={say(whole || dangers > 0 ? "bench.figure.dangers" : "bench.figure.noneSoFar", { count: dangers })}
          off={dangers > 0}
          note={
            <>
              {dangers > 0 ? <Glyph severity="danger" /> : null} {say("bench.figure.warnings", { count: warnings })}
              {whole ? null : `, ${say("bench.figure.playing")}`}
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

function sentence(assessment: Assessment, format: ScreenFormat, { say }: Words): string {
  const mainLoop = mainLoopOf(assessment);
  const loop = assessment.loops[mainLoop];
  const pump = nameOf(assessment.pumps.filter((each) => each.loop === mainLoop && each.ref !== undefined));
  if (loop === undefined || pump === undefined) {
    const gone = assessment.findings.find(
      ({ code, at, data }) =>
        code === "pump/missing" && loop !== undefined && at.startsWith(`${loop.path}/`) && data?.["name"],
    );
    return gone === undefined
      ? say("bench.answer.noPump")
      : say("bench.answer.pumpGone", { pump: String(gone.data?.["name"]) });
  }
  const { value, wish } = assessment.turnover.return;
  const moves = { pump, flow: format(loop.flow, "flow"), head: format(loop.totalHead, "head") };
  if (wish === undefined) return say("bench.answer.moves", moves);
  return say("bench.answer.movesWish", {
    ...moves,
    fits: value < wish[0] ? "less" : value > wish[1] ? "more" : "as",
    turnover: say("bench.answer.timesAnHour", { times: format.bare(value, "turnover") }),
  });
}
