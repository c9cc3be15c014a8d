import { readFileSync } from "node:fs";
import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { mainQuantity } from "./mainQuantity.ts";

function reef(
  change: (design: { drains: { share?: number; run: { opening?: number }[] }[] }) => void = () => undefined,
) {
  const read: unknown = JSON.parse(
    readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
  );
  change(read as never);
  const reading = readDesign(JSON.stringify(read), demoCatalogue);
  if (!reading.ok) throw new Error(reading.problems[0]?.message);
  return reading.design;
}
const valve = "/drains/0/run/4";
const lossAt = (design: Design) => assess(design, demoCatalogue).parts.find(({ path }) => path === valve)!.headLoss;

describe("the quantity that is typed at a valve", () => {
  it("is the share of the flow where the opening is found for it, else the opening", () => {
    expect(mainQuantity(reef(), valve)).toMatchObject({ path: "/drains/0/share", kind: "share" });
    const free = reef(({ drains }) => {
      delete drains[0]!.share;
    });
    expect(mainQuantity(free, valve)).toMatchObject({ path: `${valve}/opening` });
  });

  it("leaves the loss of a found opening alone when the opening that does not count is another", () => {
    const other = reef(({ drains }) => {
      drains[0]!.run[4]!.opening = 0.75;
    });
    expect(lossAt(other)).toBe(lossAt(reef()));
    // The siphon falls from the box to the sump, and what its pipe does not use up the valve does.
    expect(lossAt(reef())).toBeGreaterThan(0.5);
  });
});
