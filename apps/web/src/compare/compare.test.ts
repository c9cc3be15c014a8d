import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { applyEdit } from "@tidewright/design";
import { englishWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { demoJobs } from "../document/demoJobs.ts";
import { screenFormat } from "../format/screenFormat.ts";
import { compareFindings } from "./compareFindings.ts";
import { compareNumbers } from "./compareNumbers.ts";
import { compareParts } from "./compareParts.ts";

const format = screenFormat({ system: "metric", own: {} });
const design = demoJobs[0]!.design;
const slower = applyEdit(design, { op: "set", path: "/loops/0/pumps/0/speed", value: 0.5 }).design;
const [left, right] = [assess(design, demoCatalogue), assess(slower, demoCatalogue)];

describe("two designs side by side", () => {
  it("have the same numbers where they are the same design", () => {
    const rows = compareNumbers(left, assess(design, demoCatalogue), format, englishWords);
    expect(rows.length).toBeGreaterThan(8);
    for (const { change } of rows) expect(change).toBe("");
  });

  it("show less flow and less power where the pump turns slower", () => {
    const rows = compareNumbers(left, right, format, englishWords);
    // Affinity laws: less speed, less flow and less power (Gülich, Centrifugal Pumps, similarity laws; the sign alone).
    expect(rows.find(({ key }) => key.startsWith("flow "))?.change).toMatch(/^−/);
    expect(rows.find(({ key }) => key === "watts")?.change).toMatch(/^−/);
    // The same pump is bought on both sides.
    expect(rows.find(({ key }) => key.startsWith("price "))?.change).toBe("");
  });

  it("sort every finding into gone, new or the same, none twice", () => {
    const { gone, fresh, same } = compareFindings([left, design], [right, slower]);
    expect(gone.length + same.length).toBe(left.findings.length);
    expect(fresh.length + same.length).toBe(right.findings.length);
    expect(fresh.map(({ code }) => code)).toContain("flow/below-wish");
  });

  it("name the part and the field that differ, with both values", () => {
    const parts = compareParts(design, slower, englishWords);
    expect(parts).toHaveLength(1);
    expect(parts[0]).toMatchObject({ letter: "A", leftPath: "/loops/0/pumps/0", rightPath: "/loops/0/pumps/0" });
    expect(parts[0]!.rows).toMatchObject([{ kind: "changed", right: "50\u00a0%" }]);
  });

  it("write units and choices as the fields of the bench do", () => {
    const warmer = applyEdit(design, { op: "set", path: "/water/temperature", value: { value: 27, unit: "C" } }).design;
    expect(compareParts(design, warmer, englishWords)[0]!.rows[0]!.right).toBe("27\u00a0°C");
    const other = applyEdit(design, { op: "set", path: "/drains/0/kind", value: "openChannel" }).design;
    expect(compareParts(design, other, englishWords)[0]!.rows[0]!.right).toBe("Open channel");
  });

  it("mark a part that is only on one side there alone", () => {
    const fewer = applyEdit(design, { op: "remove", path: "/loops/0/run/0" }).design;
    const parts = compareParts(design, fewer, englishWords);
    const removed = parts.find(({ rows }) => rows.some(({ kind }) => kind === "removed"))!;
    expect(removed.leftPath).toBe("/loops/0/run/0");
    expect(removed.rightPath).toBeUndefined();
  });
});
