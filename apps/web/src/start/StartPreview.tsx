import { useMemo } from "react";
import { Elevation } from "../drawing/Elevation.tsx";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import type { Made } from "./useFirstDesign.ts";

interface Props {
  readonly made: Made | undefined;
  /** What the sheet is called. */
  readonly name: string | undefined;
  readonly waiting: boolean;
}

/** The system as it stands with the answers so far: the drawing, and the numbers that matter at the counter. */
export function StartPreview({ made, name, waiting }: Props) {
  const { say } = useWords();
  const format = useFormat();
  const design = useMemo(() => made && { ...made.design, name: name ?? made.design.name }, [made, name]);
  return (
    <section className="start-preview" aria-labelledby="start-preview">
      <h2 id="start-preview">{say("start.preview")}</h2>
      {made === undefined ? (
        <p className="start-empty">{say(waiting ? "start.preview.empty" : "start.preview.wrong")}</p>
      ) : (
        <>
          <StartFigures made={made} />
          <div className="start-drawing">
            <Elevation
              design={design ?? made.design}
              assessment={made.assessment}
              selection={undefined}
              format={format}
              height={420}
              initialWidth={640}
            />
          </div>
          <p className="quiet">{say("start.made", { time: format(made.took, "time") })}</p>
        </>
      )}
    </section>
  );
}

/** The numbers that matter at the counter. */
export function StartFigures({ made }: { readonly made: Made }) {
  const { say } = useWords();
  const format = useFormat();
  const { assessment } = made;
  const pump = assessment.pumps[0];
  const figures: readonly (readonly [string, string])[] = [
    [say("start.figure.volume"), format(assessment.volumes.display, "volume")],
    [
      say("start.figure.return"),
      `${format(assessment.overflow.flow, "flow")}, ${format(assessment.turnover.return.value, "turnover")}`,
    ],
    [
      say("start.figure.pump"),
      pump?.ref === undefined
        ? say("start.figure.noPump")
        : `${assessment.pumps.length > 1 ? `${assessment.pumps.length} × ` : ""}${pump.label}, ${format.perCent(pump.speed)}`,
    ],
    [say("start.figure.sump"), format(assessment.sump.margin, "volume")],
    [say("start.figure.price"), format.sum(assessment.cost.purchase, assessment.cost.currency)],
    [say("start.figure.sound"), format(assessment.sound.level, "soundLevel")],
  ];
  return (
    <dl className="start-figures">
      {figures.map(([label, text]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}
