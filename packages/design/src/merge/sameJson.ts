/** Returns whether two documents say the same: fields in any order, lists in theirs; a field holding undefined is none.
 *  one   other any JSON   -> true or false
 *  Findings: none. Throws: never: the walk keeps its own stack, so no nesting is too deep.
 *  Valid: plain objects and lists without circles.
 *  Source: own construction.
 *  Example: sameJson({ a: 1, b: [2] }, { b: [2], a: 1 })  ->  true
 *  Example: sameJson([1, 2], [2, 1])  ->  false */
export function sameJson(one: unknown, other: unknown): boolean {
  const stack: unknown[] = [one, other];
  while (stack.length > 0) {
    const b = stack.pop();
    const a = stack.pop();
    if (Object.is(a, b)) continue;
    if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
    if (Array.isArray(a) !== Array.isArray(b)) return false;
    if (Array.isArray(a) && a.length !== (b as unknown[]).length) return false;
    const [fields, others] = [a as Record<string, unknown>, b as Record<string, unknown>];
    let there = 0;
    for (const key of Object.keys(fields)) {
      if (fields[key] === undefined) continue;
      there++;
      if (!Object.hasOwn(others, key)) return false;
      stack.push(fields[key], others[key]);
    }
    for (const key of Object.keys(others)) if (others[key] !== undefined) there--;
    if (there !== 0) return false;
  }
  return true;
}
