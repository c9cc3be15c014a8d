import type { Dimension } from "@tidewright/units";
import { englishWords, type MessageKey, type Words } from "@tidewright/words";
import type { Finding } from "../finding.ts";
import { describePlace } from "./describePlace.ts";
import { findingCautions } from "./findingCautions.ts";
import { bareNumber, type Description, type Format } from "./format.ts";
import { timeWords } from "./timeWords.ts";

/** Returns a finding in plain words, with its numbers in the reader's units.
 *  finding Finding   format Format   words of the reader's language, English where left out   -> Description
 *  Source: own words.
 *  Example: describeFinding({ code: "pump/missing", severity: "warning", at: "/loops/0/pumps/0", source: "x", data: { name: "a" } }, String).title  ->  "Pump not in the catalogue" */
export function describeFinding(finding: Finding, format: Format, words: Words = englishWords): Description {
  const { code, value, data } = finding;
  const variant = (name: string): MessageKey | undefined => {
    const key = `findings.${code}.${name}`;
    return words.knows(key) ? key : undefined;
  };
  const backward = value !== undefined && value < 0 ? variant("backward") : undefined;
  const dry = data?.["verdict"] === "dry" ? variant("dry") : undefined;
  const unattended = data?.["unattended"] === undefined ? undefined : variant("unattended");
  const hasNoName = data?.["name"] === "";
  const unnamed = hasNoName ? variant("unnamed") : data?.["place"] === "display" ? variant("inDisplay") : undefined;
  const sign = backward === undefined ? 1 : -1;
  const number = (si: number | undefined) => (si === undefined ? "—" : write(si, finding.dimension, format, words));
  const given = (key: string) => (data?.[key] === undefined ? "—" : nameWords(String(data[key]), words));
  const placed = `findings.placed.${String(data?.["placed"])}`;
  const values = {
    value: number(value === undefined ? undefined : sign * value),
    limit: number(finding.limit),
    after: timeWords(Number(data?.["seconds"]), words),
    unattended: timeWords(Number(data?.["unattended"]), words),
    place: describePlace(String(data?.["place"] ?? ""), words),
    placed: words.knows(placed) ? words.say(placed) : given("placed"),
    ...Object.fromEntries(["name", "names", "scenario", "one", "other", "controller"].map((key) => [key, given(key)])),
  };
  const caution = findingCautions[code];
  return {
    title: words.say((hasNoName ? variant("unnamedTitle") : undefined) ?? `findings.${code}.title`),
    sentence: words.say(backward ?? unnamed ?? unattended ?? dry ?? `findings.${code}.sentence`, values),
    fix: words.say((hasNoName ? variant("unnamedFix") : undefined) ?? `findings.${code}.fix`, values),
    ...(caution === undefined ? {} : { caution: words.say(`findings.caution.${caution}`) }),
  };
}

/** Returns where a limit comes from, in the reader's language; what is cited from outside stays as it is cited.
 *  source text of a finding or of an animal's target   words of the reader's language   -> text
 *  Source: own words.
 *  Example: describeSource("geometry")  ->  "geometry" */
export function describeSource(source: string, words: Words = englishWords): string {
  return words.known(source);
}

/** Names that the findings put together themselves are said anew; names of a person's own stay. */
function nameWords(name: string, words: Words): string {
  if (words.language === "en") return name;
  const outlet = /^the outlet to (.*)$/.exec(name)?.[1];
  if (outlet !== undefined) return words.say("findings.outlet", { place: describePlace(outlet, words) });
  const loop = /^loop (.*)$/.exec(name)?.[1];
  return loop === undefined ? words.known(name) : words.say("findings.loop", { name: loop });
}

function write(value: number, dimension: string | undefined, format: Format, words: Words): string {
  if (dimension === undefined) return bareNumber(value, words);
  if (dimension === "money") return `${value.toFixed(0)} EUR`;
  return format(value, dimension as Dimension);
}
