import { readFileSync } from "node:fs";
import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { applyEdit, readDesign } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { layoutElevation } from "./layoutElevation.ts";
import { shareScene } from "./shareScene.ts";

const reading = readDesign(
  readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
  demoCatalogue,
);
if (!reading.ok) throw new Error("the example does not read");
const { design } = reading;
const sceneOf = (one: typeof design) => layoutElevation(one, assess(one, demoCatalogue));

describe("shareScene", () => {
  it("gives the very scene of before where nothing has changed", () => {
    const before = sceneOf(design);
    expect(shareScene(before, sceneOf(design))).toBe(before);
  });

  it("equals the new scene and keeps what a slower pump leaves as it was", () => {
    const before = sceneOf(design);
    const slower = applyEdit(design, { op: "set", path: "/loops/0/pumps/0/speed", value: 0.7 }).design;
    const now = sceneOf(slower);
    const shared = shareScene(before, now);
    expect(shared).toEqual(now);
    const kept = shared.shapes.filter((shape, i) => shape === before.shapes[i]).length;
    expect(kept / shared.shapes.length).toBeGreaterThan(1 / 3);
    expect(kept).toBeLessThan(shared.shapes.length);
  });

  it("takes a scene with other parts as it is", () => {
    const before = sceneOf(design);
    const fewer = applyEdit(design, { op: "remove", path: "/tankPumps" }).design;
    expect(shareScene(before, sceneOf(fewer))).toEqual(sceneOf(fewer));
  });
});
