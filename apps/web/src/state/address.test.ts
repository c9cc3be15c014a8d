import { describe, expect, it } from "vitest";
import { compareAddress, designAddress, readAddress } from "./address.ts";

describe("the addresses of the screens", () => {
  it("lead to the desk, to a kept design, to a trial, to the start", () => {
    expect(readAddress("", "")).toEqual({ page: "desk" });
    expect(readAddress("", "#/jobs/a")).toEqual({ page: "desk" });
    expect(readAddress("?design=a%20b", "")).toEqual({ page: "design", designId: "a b" });
    expect(readAddress("?try", "")).toEqual({ page: "try", job: 0 });
    expect(readAddress("?try=2", "")).toEqual({ page: "try", job: 2 });
    expect(readAddress("?try=-1", "")).toEqual({ page: "try", job: 0 });
    expect(readAddress("", "#/start")).toEqual({ page: "start" });
  });

  it("of two sides name what they are read back as, whatever the names hold", () => {
    const left = { designId: "a/@..b", revision: 3 };
    const right = { designId: "c d", revision: "latest" as const };
    const hash = compareAddress(left, right).replace("./", "");
    expect(readAddress("", hash)).toEqual({ page: "compare", left, right });
  });

  it("of a comparison that is none lead to the desk", () => {
    for (const hash of ["#/compare/", "#/compare/a@x..b@1", "#/compare/a@1"])
      expect(readAddress("", hash)).toEqual({ page: "desk" });
  });

  it("keep the name of a design whole", () => {
    expect(readAddress(designAddress("a&b=c").slice(2), "")).toEqual({ page: "design", designId: "a&b=c" });
  });
});
