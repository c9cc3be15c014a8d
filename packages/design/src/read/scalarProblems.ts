import type { z } from "zod";
import { shown } from "../problem.ts";
import { listed, nearest } from "./nearest.ts";
import { type Place, wrongKind } from "./place.ts";

/** Adds what is wrong with a value out of a fixed choice. */
export function walkChoice(values: readonly unknown[], place: Place): void {
  const { value, path, add } = place;
  if (values.includes(value)) return;
  const texts = values.filter((each) => typeof each === "string");
  const like = typeof value === "string" ? nearest(value, texts) : undefined;
  const choices = texts.length > 0 ? listed(texts, 20) : values.map(String).join(" or ");
  const fix = values.length === 1 ? `write ${choices}` : `write one of ${choices}`;
  add({
    path,
    message: `${shown(value)} is not known here`,
    value,
    fix: like === undefined ? fix : `did you mean "${like}"? ${fix}`,
  });
}

/** Adds what is wrong with a text. */
export function walkText(checks: readonly z.core.$ZodCheck[], place: Place): void {
  const { value, path, add } = place;
  if (typeof value !== "string") return wrongKind(place, "a text", 'write it between double quotes: "');
  for (const check of checks) {
    const { def } = check._zod as z.core.$ZodChecks["_zod"];
    if (def.check === "min_length" && value.length < def.minimum)
      add({ path, message: "the text is empty", value, fix: "give it at least one character" });
    else if (def.check === "string_format" && "pattern" in def && def.pattern !== undefined) {
      if (!(def.pattern as RegExp).test(value)) {
        const words = typeof def.error === "function" ? String(def.error({} as never)) : "it must have the right form";
        add({ path, message: `${shown(value)} is not allowed here`, value, fix: words });
      }
    }
  }
}

/** Adds what is wrong with a number. */
export function walkNumber(checks: readonly z.core.$ZodCheck[], place: Place): void {
  const { value, path, add } = place;
  if (typeof value !== "number" || Number.isNaN(value))
    return wrongKind(place, "a number", "write it without quotes, like 0.5");
  if (!Number.isFinite(value)) return wrongKind(place, "a finite number", "give a number, or leave the field out");
  for (const check of checks) {
    const { def } = check._zod as z.core.$ZodChecks["_zod"];
    if (def.check === "number_format" && !Number.isSafeInteger(value))
      add({ path, message: `${value} is not a whole number`, value, fix: "give a whole number" });
    else if (def.check === "greater_than") {
      const limit = Number(def.value);
      if (value < limit || (!def.inclusive && value === limit)) {
        const least = def.inclusive ? `${limit} or more` : `more than ${limit}`;
        add({ path, message: `${value} is too small; it must be ${least}`, value, fix: `give ${least}` });
      }
    } else if (def.check === "less_than") {
      const limit = Number(def.value);
      if (value > limit || (!def.inclusive && value === limit)) {
        const most = def.inclusive ? `${limit} or less` : `less than ${limit}`;
        add({ path, message: `${value} is too large; it must be ${most}`, value, fix: `give ${most}` });
      }
    }
  }
}
