import { type Design, type Difference, differencesBetween, type Part } from "@tidewright/design";
import type { Words } from "@tidewright/words";
import { fieldText } from "../document/fieldText.ts";
import { partForm } from "../document/partForm.ts";
import { partName, pumpName } from "../document/partName.ts";
import { letterOf } from "./letterOf.ts";

/** One thing that differs in a part. */
export interface DifferenceRow {
  readonly path: string;
  readonly kind: Difference["kind"];
  /** What differs, such as "Length"; empty where it is the part itself. */
  readonly field: string;
  readonly left: string;
  readonly right: string;
}

/** A part that differs, with the letter that marks it on both drawings. Paths are those of the part, undefined on the side
 *  that does not have it. */
export interface PartDifference {
  readonly letter: string;
  readonly title: string;
  readonly leftPath: string | undefined;
  readonly rightPath: string | undefined;
  readonly rows: readonly DifferenceRow[];
}

/** Returns the parts that differ between two designs, each with everything that differs in it, in the order of the right
 *  one.
 *  left   right   words   -> PartDifference; letters A to Z, then A2 and so on */
export function compareParts(left: Design, right: Design, words: Words): readonly PartDifference[] {
  const parts = new Map<string, { title: string; leftPath?: string; rightPath?: string; rows: DifferenceRow[] }>();
  for (const difference of differencesBetween(left, right)) {
    const { kind } = difference;
    const rightPath = kind === "removed" ? undefined : difference.path;
    const leftPath = kind === "added" ? undefined : kind === "removed" ? difference.path : difference.beforePath;
    const form = rightPath === undefined ? partForm(left, leftPath!) : partForm(right, rightPath);
    const [onLeft, onRight] = [partPath(left, leftPath), partPath(right, rightPath)];
    // A field that only one side has belongs to a part that both may have.
    const key = onRight === undefined ? `left ${onLeft}` : `right ${onRight}`;
    const known = parts.get(key);
    const row: DifferenceRow = {
      path: difference.path,
      kind,
      field: fieldWords(form, difference.path),
      left: ofField(form, difference.path, difference.before, words),
      right: ofField(form, difference.path, difference.after, words),
    };
    if (known !== undefined) known.rows.push(row);
    else
      parts.set(key, {
        title: form?.title ?? right.name,
        ...(onLeft === undefined ? {} : { leftPath: onLeft }),
        ...(onRight === undefined ? {} : { rightPath: onRight }),
        rows: [row],
      });
  }
  return [...parts.values()].map((part, place) => ({
    letter: letterOf(place),
    title: part.title,
    leftPath: part.leftPath ?? samePlace(left, part.rightPath, part.rows),
    rightPath: part.rightPath ?? samePlace(right, part.leftPath, part.rows),
    rows: part.rows,
  }));
}

/** Where only a field came or went, the part itself stands in the other document too. */
function samePlace(design: Design, path: string | undefined, rows: readonly DifferenceRow[]): string | undefined {
  if (path === undefined || rows.some((row) => row.path === path)) return undefined;
  return partForm(design, path)?.path === path ? path : undefined;
}

const partPath = (design: Design, path: string | undefined) =>
  path === undefined ? undefined : partForm(design, path)?.path;

function fieldWords(form: ReturnType<typeof partForm>, path: string): string {
  if (form === undefined || path === form.path) return "";
  const key = path.slice(form.path.length + 1);
  const field = form.fields.find((one) => one.key !== "" && (key === one.key || key.startsWith(`${one.key}/`)));
  // A field of its own name in the document rather than none.
  return field?.label ?? key.replaceAll("/", " ");
}

/** A value as its field shows it, and in plain words where it has none or is a part itself. */
function ofField(form: ReturnType<typeof partForm>, path: string, value: unknown, words: Words): string {
  const field = form?.fields.find(({ key }) => key !== "" && path === `${form.path}/${key}`);
  const text = field === undefined ? undefined : fieldText(field, value, words);
  return text ?? valueWords(value, words);
}

/** A value of the document in a few words, in the units in which it was typed. */
function valueWords(value: unknown, words: Words): string {
  if (value === undefined) return "–";
  if (typeof value === "number") return words.decimal(String(value));
  if (typeof value === "string") return pumpWords(value);
  if (typeof value !== "object" || value === null) return String(value);
  if (Array.isArray(value)) return value.map((one) => valueWords(one, words)).join(", ");
  const fields = value as Record<string, unknown>;
  if ("value" in fields && "unit" in fields) return `${valueWords(fields["value"], words)} ${String(fields["unit"])}`;
  if ("kind" in fields && isPart(fields)) return partName(fields);
  if (typeof fields["ref"] === "string") return pumpName(fields["ref"]);
  if (typeof fields["name"] === "string") return fields["name"];
  return Object.values(fields)
    .map((one) => valueWords(one, words))
    .join(", ");
}

const pumpWords = (text: string) => (/^[a-z]+-[a-z0-9-]+$/.test(text) ? pumpName(text) : text);

function isPart(fields: Record<string, unknown>): fields is Record<string, unknown> & Part {
  return ["pipe", "fitting", "valve", "device", "outlet", "tee"].includes(String(fields["kind"]));
}
