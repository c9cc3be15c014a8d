/** One field that two people changed differently at the same time. */
export interface FieldConflict {
  readonly field: string;
  readonly mine: unknown;
  readonly theirs: unknown;
}

/** Returns what is left to be done where somebody changed a record first: my changes to fields that they left alone go
 *  again, a field that both changed alike needs nothing, and one that both changed differently is for a person to choose.
 *  base the record my changes were made from   mine my changes   theirs the record as it stands   -> resend, conflicts
 *  Example: settleConflict({ name: "a", notes: "" }, { name: "b", notes: "n" }, { name: "c", notes: "" })  ->  {"resend":{"notes":"n"},"conflicts":[{"field":"name","mine":"b","theirs":"c"}]} */
export function settleConflict<Fields extends object>(
  base: Readonly<Record<string, unknown>>,
  mine: Fields,
  theirs: Readonly<Record<string, unknown>>,
): { readonly resend: Partial<Fields>; readonly conflicts: readonly FieldConflict[] } {
  const resend: Record<string, unknown> = {};
  const conflicts: FieldConflict[] = [];
  for (const [field, value] of Object.entries(mine)) {
    if (alike(value, theirs[field])) continue;
    if (alike(base[field], theirs[field])) resend[field] = value;
    else conflicts.push({ field, mine: value, theirs: theirs[field] });
  }
  return { resend: resend as Partial<Fields>, conflicts };
}

const alike = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);
