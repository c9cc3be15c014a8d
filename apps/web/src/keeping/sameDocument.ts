/** Returns whether two documents say the same; the order of fields has no meaning, that of lists has.
 *  Example: sameDocument({ a: 1, b: [2] }, { b: [2], a: 1 })  ->  true */
export function sameDocument(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one) || Array.isArray(other)) {
    if (!Array.isArray(one) || !Array.isArray(other) || one.length !== other.length) return false;
    return one.every((entry, place) => sameDocument(entry, other[place]));
  }
  const [fields, others] = [one as Record<string, unknown>, other as Record<string, unknown>];
  const names = Object.keys(fields);
  if (names.length !== Object.keys(others).length) return false;
  return names.every((name) => Object.hasOwn(others, name) && sameDocument(fields[name], others[name]));
}
