import { useMemo, useState } from "react";
import { CurvePicture } from "../curves/index.ts";
import { useFormat } from "../format/useFormat.ts";
import { useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { FaultScreen } from "./FaultScreen.tsx";

/** Height of the picture [px]: as much as a side column spares. */
const height = 220;

/** The curve picture of one loop: of the part in hand where it belongs to a loop, else of the loop last chosen. */
export function Curves() {
  const assessment = useBench((state) => state.assessed?.assessment);
  // The curves follow a hand at their leisure; the operating point is of this moment.
  const curves = useBench((state) => state.curves);
  const held = useBench((state) => loopOf(state.selection));
  const [chosen, setChosen] = useState(0);
  const [open, setOpen] = useState(true);
  const format = useFormat();
  const { say } = useWords();
  const place = Math.min(held ?? chosen, (curves?.loops.length ?? 1) - 1);
  const pumps = useMemo(() => curves?.pumps.filter(({ loop }) => loop === place), [curves, place]);
  const loop = curves?.loops[place];
  const now = assessment?.loops[place] ?? loop;
  if (assessment === undefined || loop === undefined || now === undefined || pumps === undefined) return null;
  return (
    <section className="curves" aria-label={say("bench.curves.label")}>
      <header className="curves-head">
        <h2 className="section-title">
          <button type="button" className="disclose" aria-expanded={open} onClick={() => setOpen(!open)}>
            {say("bench.curves.title")}
          </button>
        </h2>
        {assessment.loops.length === 1 ? (
          <span className="quiet">{loop.name}</span>
        ) : (
          <select
            className="select"
            aria-label={say("bench.curves.loop")}
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
        <FaultScreen what={say("bench.curves.what")} again={assessment}>
          <CurvePicture
            loop={loop}
            pumps={pumps}
            now={now}
            pump={assessment.pumps.find((pump) => pump.loop === place)}
            wish={loop.purpose === "return" ? curves?.turnover.returnFlowWish : undefined}
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
