import { useState } from "react";
import { CurvePicture } from "../curves/index.ts";
import { useFormat } from "../format/useFormat.ts";
import { useBench } from "../state/bench.ts";

/** The curve picture of one loop: of the part in hand where it belongs to a loop, else of the loop last chosen. */
export function Curves() {
  const assessment = useBench((state) => state.assessed?.assessment);
  const held = useBench((state) => loopOf(state.selection));
  const [chosen, setChosen] = useState(0);
  const format = useFormat();
  if (assessment === undefined) return null;
  const place = Math.min(held ?? chosen, assessment.loops.length - 1);
  const loop = assessment.loops[place];
  if (loop === undefined) return null;
  return (
    <section className="curves" aria-label="Pump curve and system curve">
      <header className="curves-head">
        <h2 className="section-title">Curve</h2>
        {assessment.loops.length === 1 ? (
          <span className="quiet">{loop.name}</span>
        ) : (
          <select
            className="select"
            aria-label="Loop shown"
            value={place}
            onChange={(event) => setChosen(Number(event.target.value))}
            disabled={held !== undefined}
          >
            {assessment.loops.map(({ name, path }, index) => (
              <option key={path} value={index}>
                {name}
              </option>
            ))}
          </select>
        )}
      </header>
      <CurvePicture
        loop={loop}
        pumps={assessment.pumps.filter((pump) => pump.loop === place)}
        wish={loop.purpose === "return" ? assessment.turnover.returnFlowWish : undefined}
        format={format}
      />
    </section>
  );
}

function loopOf(selection: string | undefined): number | undefined {
  const found = /^\/loops\/(\d+)/.exec(selection ?? "");
  return found === null ? undefined : Number(found[1]);
}
