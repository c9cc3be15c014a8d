/** A document of some kilobytes that tells which revision it belongs to, in its head and at its end. */
export function trialDocument(revision: number): unknown {
  return {
    tidewright: 1,
    name: `Revision ${revision}`,
    parts: Array.from({ length: 40 }, (_, index) => ({
      kind: "pipe",
      length: { value: revision + index / 100, unit: "m" },
      note: "as measured on site, café corner",
    })),
    end: revision,
  };
}
