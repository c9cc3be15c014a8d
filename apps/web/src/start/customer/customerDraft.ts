import { readStart, type StartAnswers } from "@tidewright/advice";
import type { AnimalGroup } from "@tidewright/design";
import type { Quantity } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import { readQuantity } from "../../format/quantityText.ts";
import { newId } from "../../keeping/newId.ts";

/** What a customer measures. */
const customerSizes = ["length", "width", "height", "volume", "stand", "holeSize", "reservoir"] as const;
/** One thing that a customer measures. */
export type CustomerSize = (typeof customerSizes)[number];

/** What a customer has typed so far. */
export interface CustomerDraft {
  /** Made once, so that the server knows what it has already when it is sent again. */
  readonly id: string;
  readonly name: string;
  readonly contact: string;
  readonly notes: string;
  readonly units: "metric" | "us";
  readonly sizes: Readonly<Partial<Record<CustomerSize, string>>>;
  readonly animals: readonly AnimalGroup[];
  readonly glass: "drill" | "drilled" | "keep" | "unknown";
  readonly holes: string;
  readonly topOff: "automatic" | "none" | "unknown";
}

/** What is wrong with a draft, by field. */
export type CustomerProblems = Readonly<Partial<Record<CustomerSize | "name" | "contact" | "tank" | "holes", string>>>;

/** What is to be sent, or what is wrong. */
export type CustomerReading =
  | { readonly ok: true; readonly answers: StartAnswers; readonly notes: string }
  | { readonly ok: false; readonly problems: CustomerProblems };

/** Returns the unit that a customer writes a size in. */
export function customerUnit(size: CustomerSize, units: CustomerDraft["units"]): string {
  if (size === "volume" || size === "reservoir") return units === "us" ? "US gal" : "L";
  if (size === "holeSize") return units === "us" ? "in" : "mm";
  return units === "us" ? "in" : "cm";
}

/** Returns a customer's draft as what is sent, or everything that is wrong with it in plain words.
 *  draft   words of the customer's language   -> CustomerReading */
export function readCustomer(draft: CustomerDraft, words: Words): CustomerReading {
  const { say } = words;
  const problems: Partial<Record<keyof CustomerProblems, string>> = {};
  if (draft.name.trim() === "") problems.name = say("start.customer.needName");
  if (draft.contact.trim() === "") problems.contact = say("start.customer.needContact");
  const drilled = draft.glass === "drilled";
  const read = new Map<CustomerSize, Quantity>();
  for (const size of customerSizes) {
    const text = draft.sizes[size]?.trim() ?? "";
    if (text === "" || (size === "holeSize" && !drilled)) continue;
    if (size === "reservoir" && draft.topOff !== "automatic") continue;
    const unit = customerUnit(size, draft.units);
    const reading = readQuantity(text, size === "volume" || size === "reservoir" ? "volume" : "length", unit, words);
    if (reading.ok) read.set(size, reading.quantity);
    else problems[size] = say("start.customer.number", { example: `120 ${unit}` });
  }
  const count = draft.holes.trim() === "" || !drilled ? undefined : Number(draft.holes);
  if (count !== undefined && !(Number.isInteger(count) && count >= 1 && count <= 6))
    problems.holes = say("start.customer.number", { example: "2" });
  const tank = Object.fromEntries(
    (["length", "width", "height", "volume"] as const).flatMap((size) => {
      const quantity = read.get(size);
      return quantity === undefined ? [] : [[size, quantity]];
    }),
  );
  const holeSize = read.get("holeSize");
  const answers = {
    units: draft.units,
    tank,
    ...(draft.animals.length > 0 ? { animals: [...draft.animals] } : {}),
    ...(draft.glass === "unknown"
      ? {}
      : {
          overflow: {
            glass: draft.glass,
            ...(count !== undefined && holeSize !== undefined ? { holes: { count, diameter: holeSize } } : {}),
          },
        }),
    ...(draft.topOff === "unknown"
      ? {}
      : { topOff: { kind: draft.topOff, ...(read.has("reservoir") ? { reservoir: read.get("reservoir") } : {}) } }),
    ...(read.has("stand") ? { standHeight: read.get("stand") } : {}),
  };
  const reading = readStart(answers);
  if (!reading.ok)
    for (const { path } of reading.problems) {
      const size = sizeAt(path);
      if (size !== undefined && read.has(size)) problems[size] ??= say("start.customer.outOfRange");
      // Where a size was typed that cannot be read, it is told once.
      else if (size === undefined || problems[size] === undefined) problems.tank ??= say("start.customer.needTank");
    }
  if (Object.keys(problems).length > 0 || !reading.ok) return { ok: false, problems };
  // A number of holes without their size would be lost on the way.
  const more = count !== undefined && holeSize === undefined ? `${say("start.customer.holes")} ${count}` : "";
  return {
    ok: true,
    answers: reading.answers,
    notes: [draft.notes.trim(), more].filter((text) => text !== "").join("\n"),
  };
}

function sizeAt(path: string): CustomerSize | undefined {
  if (path.startsWith("/standHeight")) return "stand";
  if (path.startsWith("/topOff")) return "reservoir";
  if (path.startsWith("/overflow/holes")) return "holeSize";
  const side = /^\/tank\/(\w+)/.exec(path)?.[1];
  return customerSizes.find((size) => size === side);
}

/** Nothing typed yet, in the units of the reader's country. */
export function emptyCustomer(locale: string): CustomerDraft {
  return {
    id: newId(),
    name: "",
    contact: "",
    notes: "",
    units: /-US\b/.test(locale) ? "us" : "metric",
    sizes: {},
    animals: [],
    glass: "unknown",
    holes: "",
    topOff: "unknown",
  };
}
