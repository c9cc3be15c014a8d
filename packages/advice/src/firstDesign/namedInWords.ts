import type { Design } from "@tidewright/design";
import type { MessageKey, Words } from "@tidewright/words";

/** Names that a first design gives to its parts, and how they are said; a number after one stays. */
const names: Readonly<Record<string, MessageKey>> = {
  "whole tank": "start.names.wholeTank",
  pumps: "start.names.pumps",
  "heaters and light": "start.names.heatersAndLight",
  drain: "start.names.drain",
  skimmer: "start.names.skimmer",
  return: "start.names.return",
  siphon: "start.names.siphon",
  "open channel": "start.names.openChannel",
  emergency: "start.names.emergency",
};

/** Returns a first design with its own names in the reader's language; a name that somebody gave stays.
 *  design of `firstDesign`   words of the language, with what is said at the start   -> Design; only names differ
 *  Findings: none. Throws: never.
 *  Valid: any design; nothing refers to a part by its name.
 *  Source: own construction.
 *  Example: namedInWords({ zones: [], name: "Reef" }, { say: (key) => key }).name  ->  "Reef" */
export function namedInWords<Document extends Pick<Design, "name">>(
  design: Document,
  { say }: Pick<Words, "say">,
): Document {
  const said = (name: string): string => {
    const [, plain = name, number = ""] = /^(.*?)( \d+)?$/.exec(name) ?? [];
    const key = Object.hasOwn(names, plain) ? names[plain] : undefined;
    return key === undefined ? name : `${say(key)}${number}`;
  };
  const renamed = (value: unknown, key?: string): unknown => {
    if (key === "name" && typeof value === "string") return said(value);
    if (Array.isArray(value)) return value.map((each) => renamed(each));
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, renamed(each, name)]));
  };
  // The whole has the name that somebody gave it, be it that of a part.
  const name = design.name === "First design" ? say("start.names.design") : design.name;
  return { ...(renamed(design) as Document), name };
}
