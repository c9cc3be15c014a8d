import { useState } from "react";
import { CurvePicture } from "../curves/index.ts";
import { useFormat } from "../format/useFormat.ts";
import { useBench } from "../state/bench.ts";
import { FaultScreen } from "./FaultScreen.tsx";

/** Height of the picture [px]: as much as a side column spares. */
const height = 220;

/** The curve picture of one loop: of the part in hand where it belongs to a loop, else of the loop last chosen. */
export function Curves() {
  const assessment = useBench((state) => state.assessed?.assessment);
  const held = useBench((state) => loopOf(state.selection));
  const [chosen, setChosen] = useState(0);
  const [open, setOpen] = useState(true);
  const format = useFormat();
  if (assessment === undefined) return null;
  const place = Math.min(held ?? chosen, assessment.loops.length - 1);
  const loop = assessment.loops[place];
  if (loop === undefined) return null;
  return (
    <section className="curves" aria-label="Pump curve and system curve">
      <header className="curves-head">
        <h2 className="section-title">
          <button type="button" className="disclose" aria-expanded={open} onClick={() => setOpen(!open)}>
            Curve
          </button>
        </h2>
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
      {open ? (
        <FaultScreen what="the curve" again={assessment}>
          <CurvePicture
            loop={loop}
            pumps={assessment.pumps.filter((pump) => pump.loop === place)}
            wish={loop.purpose === "return" ? assessment.turnover.returnFlowWish : undefined}
            format={format}
            height={height}
          />
        </FaultScreen>
      ) : null}
    </section>
  );
}

function loopOf(selection: string | undefined): number | undefined {
  const found = /^\/loops\/(\d+)/.exec(selection ?? "");
  return found === null ? undefined : Number(found[1]);
}
