import type { ReactNode } from "react";
import { useFormat } from "../format/useFormat.ts";
import type { ProvenanceId } from "../provenance/provenance.ts";
import { Sourced } from "../provenance/Sourced.tsx";
import { useBench } from "../state/bench.ts";

/** What it costs, draws, warms and sounds like, each number with its origin. */
export function CostSheet() {
  const assessment = useBench((state) => state.assessed?.assessment);
  const format = useFormat();
  if (assessment === undefined) return <p className="quiet">Solving…</p>;
  const { cost, power, heat, sound, turnover, volumes } = assessment;
  return (
    <div className="sheet-columns">
      <Block title="To buy">
        {cost.items.map((item) => (
          <Line key={`${item.path} ${item.label}`} label={item.label} value={format(item.price, "money")} />
        ))}
        <Line strong label="Together" value={format(cost.purchase, "money")} of="price" />
        <Line
          strong
          label={`Buy and run, ${format(cost.horizon, "time")}`}
          value={format(cost.total, "money")}
          of="horizonCost"
        />
      </Block>
      <Block title="Electricity">
        <Line label="Power" value={format(power.watts, "power")} of="watts" />
        <Line label="Energy a year" value={format(power.annualEnergy, "energy")} of="annualCost" />
        <Line label="Cost a year" value={format(power.annualCost, "money")} of="annualCost" />
        {power.circuits.map((circuit, place) => (
          <Line
            key={circuit.path}
            label={`Circuit ${circuit.name}, limit ${format(circuit.limit, "current")}`}
            value={format(circuit.current, "current")}
            of="circuit"
            index={place}
          />
        ))}
      </Block>
      <Block title="Heat and sound">
        <Line label="Heat into the water" value={format(heat.intoWater, "power")} of="heat" />
        <Line label="Chillers take out" value={format(heat.chillerCapacity, "power")} of="heat" />
        <Line label="Sound, all together" value={format(sound.level, "soundLevel")} of="sound" />
        {sound.wish === undefined ? null : <Line label="No louder than" value={format(sound.wish, "soundLevel")} />}
      </Block>
      <Block title="Water and animals">
        <Line label="In the system" value={format(volumes.system, "volume")} of="volume" />
        <Line label="All water movement" value={format(turnover.total.value, "turnover")} of="totalTurnover" />
        {turnover.animals.map((target) => (
          <Line
            key={target.zone}
            label={`${target.zone}: usual, common practice`}
            value={`${format(target.practiceTurnover[0], "turnover")} to ${format(target.practiceTurnover[1], "turnover")}`}
          />
        ))}
        {turnover.animals.map((target) =>
          target.speed === undefined ? null : (
            <Line
              key={`${target.zone} speed`}
              label={`${target.zone}: speed, ${target.source}`}
              value={`${format(target.speed[0], "velocity")} to ${format(target.speed[1], "velocity")}`}
            />
          ),
        )}
      </Block>
    </div>
  );
}

function Block({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="sheet-block">
      <h3>{title}</h3>
      <dl className="pairs">{children}</dl>
    </section>
  );
}

interface LineProps {
  readonly label: string;
  readonly value: string;
  readonly of?: ProvenanceId;
  readonly index?: number;
  readonly strong?: boolean;
}

function Line({ label, value, of, index = 0, strong = false }: LineProps) {
  return (
    <div className={strong ? "strong" : undefined}>
      <dt>{label}</dt>
      <dd>
        {of === undefined ? (
          value
        ) : (
          <Sourced of={of} index={index}>
            {value}
          </Sourced>
        )}
      </dd>
    </div>
  );
}
