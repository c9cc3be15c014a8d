import type { Dimension } from "@tidewright/units";
import type { Finding } from "../finding.ts";
import { describePlace } from "./describePlace.ts";
import { findingWords } from "./findingWords.ts";
import type { Description, Format } from "./format.ts";
import { timeWords } from "./timeWords.ts";

/** Returns a finding in plain words, with its numbers in the reader's units.
 *  finding Finding   format Format   -> Description
 *  Source: own words.
 *  Example: describeFinding({ code: "pump/missing", severity: "warning", at: "/loops/0/pumps/0", source: "x", data: { name: "a" } }, String).title  ->  "No pump chosen" */
export function describeFinding(finding: Finding, format: Format): Description {
  const words = findingWords[finding.code];
  const backward = finding.value !== undefined && finding.value < 0 ? words.backward : undefined;
  const dry = finding.data?.["verdict"] === "dry" ? words.dry : undefined;
  const unnamed = finding.data?.["name"] === "" ? words.unnamed : undefined;
  const sign = backward === undefined ? 1 : -1;
  const number = (value: number | undefined) => (value === undefined ? "—" : write(value, finding.dimension, format));
  const fill = (text: string) =>
    text.replace(/\{(\w+)\}/g, (_, key: string) => {
      if (key === "value") return number(finding.value === undefined ? undefined : sign * finding.value);
      if (key === "limit") return number(finding.limit);
      if (key === "after") return timeWords(Number(finding.data?.["seconds"]));
      if (key === "place") return describePlace(String(finding.data?.["place"] ?? ""));
      const given = finding.data?.[key];
      return given === undefined ? "—" : String(placedWords[String(given)] ?? given);
    });
  return {
    title: words.title,
    sentence: fill(backward ?? unnamed ?? dry ?? words.sentence),
    fix: fill(words.fix),
    ...(words.caution ? { caution: words.caution } : {}),
  };
}

const placedWords: Readonly<Record<string, string>> = {
  inSump: "in the sump",
  external: "outside the sump",
  inTank: "in the tank",
};

function write(value: number, dimension: string | undefined, format: Format): string {
  if (dimension === undefined) return String(value);
  if (dimension === "money") return `${value.toFixed(0)} EUR`;
  return format(value, dimension as Dimension);
}
