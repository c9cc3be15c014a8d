import { describeSource } from "@tidewright/advice";
import type { ReactNode } from "react";
import { useFormat } from "../format/useFormat.ts";
import type { ProvenanceId } from "../provenance/provenance.ts";
import { Sourced } from "../provenance/Sourced.tsx";
import { useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";

/** What it costs, draws, warms and sounds like, each number with its origin. */
export function CostSheet() {
  const assessment = useBench((state) => state.assessed?.assessment);
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  if (assessment === undefined) return <p className="quiet">{say("bench.cost.solving")}</p>;
  const { cost, power, heat, sound, turnover, volumes } = assessment;
  return (
    <div className="sheet-columns">
      <Block title={say("bench.cost.toBuy")}>
        {cost.items.map((item) => (
          <Line
            key={`${item.path} ${item.label}`}
            label={words.known(item.label)}
            value={format(item.price, "money")}
          />
        ))}
        <Line strong label={say("bench.cost.together")} value={format(cost.purchase, "money")} of="price" />
        <Line
          strong
          label={say("bench.cost.buyAndRun", { time: format(cost.horizon, "time") })}
          value={
            cost.total === undefined
              ? say("bench.cost.notAdded", { one: cost.currency, other: power.tariffCurrency })
              : format.sum(cost.total, cost.currency)
          }
          of="horizonCost"
        />
      </Block>
      <Block title={say("bench.cost.electricity")}>
        <Line label={say("bench.figure.power")} value={format(power.watts, "power")} of="watts" />
        <Line label={say("bench.cost.energyAYear")} value={format(power.annualEnergy, "energy")} of="annualCost" />
        <Line
          label={say("bench.cost.costAYear")}
          value={format.sum(power.annualCost, power.tariffCurrency)}
          of="annualCost"
        />
        {power.circuits.map((circuit, place) => (
          <Line
            key={circuit.path}
            label={say("bench.cost.circuit", { name: circuit.name, limit: format(circuit.limit, "current") })}
            value={format(circuit.current, "current")}
            of="circuit"
            index={place}
          />
        ))}
      </Block>
      <Block title={say("bench.cost.heatAndSound")}>
        <Line label={say("bench.cost.heat")} value={format(heat.intoWater, "power")} of="heat" />
        <Line label={say("bench.cost.chillers")} value={format(heat.chillerCapacity, "power")} of="heat" />
        <Line label={say("bench.cost.sound")} value={format(sound.level, "soundLevel")} of="sound" />
        {sound.wish === undefined ? null : (
          <Line label={say("bench.cost.noLouder")} value={format(sound.wish, "soundLevel")} />
        )}
      </Block>
      <Block title={say("bench.cost.waterAndAnimals")}>
        <Line label={say("bench.cost.system")} value={format(volumes.system, "volume")} of="volume" />
        <Line
          label={say("bench.cost.allMovement")}
          value={format(turnover.total.value, "turnover")}
          of="totalTurnover"
        />
        {turnover.animals.map((target) => (
          <Line
            key={target.zone}
            label={say("bench.cost.usual", { zone: target.zone })}
            value={say("bench.cost.range", {
              low: format(target.practiceTurnover[0], "turnover"),
              high: format(target.practiceTurnover[1], "turnover"),
            })}
          />
        ))}
        {turnover.animals.map((target) =>
          target.speed === undefined ? null : (
            <Line
              key={`${target.zone} speed`}
              label={say("bench.cost.zoneSpeed", { zone: target.zone, source: describeSource(target.source, words) })}
              value={say("bench.cost.range", {
                low: format(target.speed[0], "velocity"),
                high: format(target.speed[1], "velocity"),
              })}
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
