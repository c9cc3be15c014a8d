import { readFileSync } from "node:fs";
import { demoCatalogue, findPump, withOwnPumps } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import { pumpRefs } from "../references/pumpRefs.ts";
import { checkKeptDesign } from "./checkKeptDesign.ts";

// biome-ignore lint/suspicious/noExplicitAny: the tests put wrong things into the document on purpose
type Loose = any;
const read = (): Loose =>
  JSON.parse(readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8"));
const withPumps = (ref: string, tankRef?: string): Loose => {
  const design = read();
  design.loops[0].pumps[0].ref = ref;
  if (tankRef !== undefined) design.tankPumps[0].ref = tankRef;
  return design;
};
const own = { ...findPump(demoCatalogue, "ferrow-c40")!, id: "house-1" };

describe("a design that was kept", () => {
  it("reads on when its pumps are taken out of the catalogue", () => {
    const design = withPumps("house-1", "house-2");
    expect(checkKeptDesign(design, withOwnPumps(demoCatalogue, [own]))).toMatchObject({ ok: true });
    expect(checkKeptDesign(design, demoCatalogue)).toMatchObject({ ok: true });
  });

  it("still tells of everything else that is wrong with it", () => {
    const design = withPumps("house-1");
    design.drains[0].run[0].series = "pn16-33";
    const reading = checkKeptDesign(design, demoCatalogue);
    expect(reading.ok ? [] : reading.problems.map(({ path }) => path)).toEqual(["/drains/0/run/0/series"]);
  });

  it("takes no pump in anew that nobody makes", () => {
    const before = withPumps("house-1");
    expect(checkKeptDesign(withPumps("house-1"), demoCatalogue, [before])).toMatchObject({ ok: true });
    expect(checkKeptDesign(withPumps("house-9"), demoCatalogue, [before])).toMatchObject({
      ok: false,
      problems: [{ path: "/loops/0/pumps/0/ref", message: 'there is no pump "house-9"' }],
    });
    expect(checkKeptDesign(withPumps("house-9"), demoCatalogue, [])).toMatchObject({ ok: false });
  });
});

describe("the pumps that a design names", () => {
  it("are those of its loops and of the display", () => {
    const design = withPumps("house-1", "house-2");
    const refs = pumpRefs(design);
    expect(refs).toContainEqual({ path: "/loops/0/pumps/0/ref", ref: "house-1" });
    expect(refs).toContainEqual({ path: "/tankPumps/0/ref", ref: "house-2" });
  });

  it.each([null, 4, "reef", [], {}, { loops: 3, tankPumps: [null, { ref: 4 }] }, { loops: [null, { pumps: "x" }] }])(
    "are none where nothing can be read: %j",
    (value) => {
      expect(pumpRefs(value)).toEqual([]);
    },
  );
});
