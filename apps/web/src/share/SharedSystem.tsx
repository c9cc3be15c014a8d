import { checkKeptDesign, type Design } from "@tidewright/design";
import { useEffect, useMemo, useRef, useState } from "react";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";
import { Elevation } from "../drawing/index.ts";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import { plainWords } from "./plainWords.ts";
import { type Reckoned, reckon } from "./reckon.ts";

/** The drawing with its numbers, and below it in plain words what the system will do. */
export function SharedSystem({ document }: { readonly document: unknown }) {
  const { say } = useWords();
  const design = useMemo(() => {
    const reading = checkKeptDesign(document, currentCatalogue());
    return reading.ok ? reading.design : undefined;
  }, [document]);
  if (design === undefined) return <p className="field-problem">{say("doors.cannotDraw")}</p>;
  return <Drawn design={design} />;
}

function Drawn({ design }: { readonly design: Design }) {
  const words = useWords();
  const { say } = words;
  const format = useFormat();
  const [reckoned, setReckoned] = useState<Reckoned>({ assessment: undefined, sweep: undefined, fault: false });
  useEffect(() => reckon(design, setReckoned), [design]);
  const frame = useRef<HTMLDivElement>(null);
  const { assessment, sweep, fault } = reckoned;
  // What was found is told in words below; marks that lead nowhere would only worry.
  const drawn = useMemo(() => (assessment === undefined ? undefined : { ...assessment, findings: [] }), [assessment]);
  return (
    <>
      <section className="share-drawing" ref={frame} aria-label={say("doors.theDrawing")}>
        <Elevation design={design} assessment={drawn} selection={undefined} format={format} />
      </section>
      {fault ? <p className="field-problem">{say("doors.cannotReckon")}</p> : null}
      {assessment === undefined ? (
        <p className="share-wait" role="status">
          {say("doors.reckoning")}
        </p>
      ) : (
        <section className="share-words" aria-label={say("doors.whatItDoes")}>
          <h2>{say("doors.whatItDoes")}</h2>
          <dl>
            {plainWords(design, assessment, sweep, format, words).map(({ id, title, figure, text, wrong }) => (
              <div key={id} data-plain={id} data-wrong={wrong ? "" : undefined}>
                <dt>{title}</dt>
                <dd className="share-figure">{figure}</dd>
                <dd>{text}</dd>
              </div>
            ))}
          </dl>
        </section>
      )}
    </>
  );
}
