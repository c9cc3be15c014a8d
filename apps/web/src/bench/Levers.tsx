import { describeLever, type Lever } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { useState } from "react";
import { useFormat } from "../format/useFormat.ts";
import { select, useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { EffectTable } from "./EffectTable.tsx";

/** Every single change that helps, each solved again, best for its money first. */
export function Levers() {
  const { say } = useWords();
  const levers = useBench((state) => state.levers);
  const stale = useBench((state) => state.levers?.design !== state.history.present);
  if (levers === undefined) return <p className="quiet">{say("bench.levers.solving")}</p>;
  if (levers.levers.length === 0) return <p className="quiet">{say("bench.levers.none")}</p>;
  return (
    <ol className="lever-list" aria-busy={stale} data-stale={stale ? "" : undefined}>
      {levers.levers.map((lever) => (
        <LeverRow key={`${lever.kind} ${lever.at} ${lever.label}`} lever={lever} base={levers.design} />
      ))}
    </ol>
  );
}

function LeverRow({ lever, base }: { readonly lever: Lever; readonly base: Design }) {
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  const [open, setOpen] = useState(false);
  const { before, after } = lever;
  const more = after.returnFlow - before.returnFlow;
  const changes = [
    Math.abs(more) > before.returnFlow * 0.002
      ? say("bench.levers.flow", {
          before: format(before.returnFlow, "flow"),
          after: format(after.returnFlow, "flow"),
        })
      : "",
    Math.abs(after.watts - before.watts) > 0.5
      ? say("bench.levers.power", { before: format(before.watts, "power"), after: format(after.watts, "power") })
      : "",
    lever.cures.length > 0 ? say("bench.levers.cures", { count: lever.cures.length }) : "",
    lever.causes.length > 0 ? say("bench.levers.brings", { count: lever.causes.length }) : "",
  ].filter((text) => text !== "");
  return (
    <li className="lever">
      <div className="lever-line">
        <button type="button" className="lever-name" onClick={() => select(lever.at)}>
          {describeLever(lever, words)}
        </button>
        <span className="lever-changes">{changes.join(" · ")}</span>
        <span className="lever-price">{lever.price > 0 ? format(lever.price, "money") : say("bench.levers.free")}</span>
        <button type="button" className="action" aria-expanded={open} onClick={() => setOpen(!open)}>
          {say(open ? "bench.levers.close" : "bench.levers.try")}
        </button>
      </div>
      {open ? <EffectTable lever={lever} base={base} /> : null}
    </li>
  );
}
