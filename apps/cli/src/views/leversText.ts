import type { Lever } from "@tidewright/advice";
import type { Dimension } from "@tidewright/units";
import type { Look } from "../output/deliver.ts";
import { money } from "../output/format.ts";
import { wrap } from "../output/wrap.ts";
import { paragraphs, section } from "./section.ts";

/** Currencies of parts to buy, and of running costs. */
export interface LeverCurrencies {
  readonly prices: string;
  readonly running: string;
}

/** Returns levers as text: the best in a sentence, then each with what it changes, cures, causes and costs. */
export function leversText(levers: readonly Lever[], currencies: LeverCurrencies, look: Look): string {
  const best = levers[0];
  if (best === undefined) return "No single change that was tried would help.";
  const answer = `The one change that would help most: ${best.label} (${priceWords(best, currencies.prices)}).`;
  const entries = levers.map((lever, i) => entryText(lever, i + 1, currencies, look));
  return paragraphs([
    wrap(answer, look.width),
    section("Changes, each on its own", entries.join("\n\n"), look),
    wrap("Prices are parts from the catalogue; labour is not counted.", look.width),
  ]);
}

function entryText(lever: Lever, place: number, currencies: LeverCurrencies, look: Look): string {
  const { styles, width } = look;
  const codes = (list: Lever["cures"]) => list.map(({ code, at }) => `${code} at ${at}`).join(", ");
  const line = (name: string, text: string) => (text === "" ? "" : `     ${wrap(`${name} ${text}`, width, "     ")}`);
  return [
    `  ${styles.bold(wrap(`${place}. ${lever.label} (${priceWords(lever, currencies.prices)})`, width, "     "))}`,
    `     ${styles.dim(`${lever.kind} at ${lever.at}`)}`,
    line("changes", effectText(lever, currencies.running, look)),
    line("cures", codes(lever.cures)),
    line("causes", codes(lever.causes)),
  ]
    .filter((each) => each !== "")
    .join("\n");
}

/** Only what differs is told: a pipe that changes nothing but the flow should not fill three lines. */
function effectText({ before, after }: Lever, currency: string, { format }: Look): string {
  const told: string[] = [];
  const tell = (name: string, from: string, to: string) => {
    if (from !== to) told.push(`${name} ${from} to ${to}`);
  };
  const quantities: readonly [
    name: string,
    key: "returnFlow" | "totalHead" | "watts" | "soundLevel" | "sumpMargin",
    Dimension,
  ][] = [
    ["return flow", "returnFlow", "flow"],
    ["total head", "totalHead", "head"],
    ["power", "watts", "power"],
    ["sound", "soundLevel", "soundLevel"],
    ["room in the sump on a power cut", "sumpMargin", "volume"],
  ];
  for (const [name, key, dimension] of quantities)
    tell(name, format(before[key], dimension), format(after[key], dimension));
  tell("running cost a year", money(before.annualCost, currency), money(after.annualCost, currency));
  tell("worst drain's share of its quiet flow", before.drainLoad.toFixed(2), after.drainLoad.toFixed(2));
  tell("dangers", String(before.dangers), String(after.dangers));
  tell("warnings", String(before.warnings), String(after.warnings));
  return told.length === 0 ? "nothing that can be measured" : told.join("; ");
}

function priceWords({ price }: Lever, currency: string): string {
  return price === 0 ? "nothing to buy" : `parts for ${money(price, currency)}`;
}
