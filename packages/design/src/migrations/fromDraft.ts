import { isObject } from "../read/place.ts";

type Fields = Readonly<Record<string, unknown>>;

/** Returns a document of the draft form, version 0, in the form of version 1: wishes.turnover, one number of display
 *  volumes an hour, becomes returnTurnover, a range from that number to itself; a loop's "tree" becomes its "run"; a
 *  sump chamber's "weirAfter" becomes its "baffle".
 *  document version 0   -> version 1, the version field still as it was
 *  Findings: none. Throws: never.
 *  Valid: any object; a field already there under its new name is not overwritten, and the old one then stays to be named.
 *  Source: own construction.
 *  Example: fromDraft({ wishes: { turnover: 8 } }).wishes.returnTurnover[0]  ->  {"value": 8, "unit": "1/h"} */
export function fromDraft(document: Fields): Record<string, unknown> {
  return {
    ...document,
    ...changed(document, "wishes", (wishes) => renamed(wishes, "turnover", "returnTurnover", asRange)),
    ...changed(document, "loops", (loops) => eachOf(loops, (loop) => renamed(loop, "tree", "run"))),
    ...changed(document, "sump", (sump) =>
      isObject(sump)
        ? { ...sump, ...changed(sump, "chambers", (all) => eachOf(all, (one) => renamed(one, "weirAfter", "baffle"))) }
        : sump,
    ),
  };
}

function changed(of: Fields, name: string, change: (value: unknown) => unknown): Fields {
  return Object.hasOwn(of, name) ? { [name]: change(of[name]) } : {};
}

function eachOf(value: unknown, change: (each: unknown) => unknown): unknown {
  return Array.isArray(value) ? value.map(change) : value;
}

function renamed(value: unknown, old: string, name: string, change = (each: unknown) => each): unknown {
  if (!isObject(value) || !Object.hasOwn(value, old) || Object.hasOwn(value, name)) return value;
  const { [old]: kept, ...rest } = value;
  return { ...rest, [name]: change(kept) };
}

function asRange(turnover: unknown): unknown {
  if (typeof turnover !== "number") return turnover;
  const each = { value: turnover, unit: "1/h" };
  return [each, { ...each }];
}
