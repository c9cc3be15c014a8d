import type { Job } from "@tidewright/protocol";
import { loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { signInWords } from "../doors/signInWords.ts";
import { waitOf } from "../words/refusedWords.ts";
import { newPumpHash, pumpHash, readDeskAddress } from "./deskAddress.ts";
import { jobOrder, stageCounts } from "./jobOrder.ts";
import { linkAddress } from "./LinkOnce.tsx";
import { readDecimal } from "./readDecimal.ts";
import { problemWords } from "./refusalWords.ts";
import { sizeWords, whenWords } from "./whenWords.ts";

const job = (id: string, stage: Job["stage"], updatedAt: string): Job => ({
  id,
  name: id,
  customerId: null,
  customerName: null,
  stage,
  notes: "",
  version: 1,
  createdAt: updatedAt,
  updatedAt,
});

const english = await loadWords("en");

describe("words and order of the desk", () => {
  it("puts jobs to review first and then the latest change", () => {
    const jobs = [
      job("old", "built", "2026-01-01T00:00:00.000Z"),
      job("new", "designing", "2026-03-01T00:00:00.000Z"),
      job("review", "intake", "2025-01-01T00:00:00.000Z"),
    ];
    expect(jobOrder(jobs).map(({ id }) => id)).toEqual(["review", "new", "old"]);
    expect(stageCounts(jobs)).toMatchObject({ intake: 1, designing: 1, built: 1, closed: 0 });
  });

  it("reads an address that a hand has broken as the list of jobs", () => {
    for (const hash of ["", "#/", "#/nowhere", "#/jobs/", "#x"])
      expect(readDeskAddress(hash)).toEqual({ screen: "jobs" });
    expect(readDeskAddress("#/jobs/%E0%A4%A")).toEqual({ screen: "job", id: "%E0%A4%A" });
    expect(readDeskAddress("#/people")).toEqual({ screen: "people" });
    expect(readDeskAddress(pumpHash("a b"))).toEqual({ screen: "pump", id: "a b" });
    expect(readDeskAddress(newPumpHash("a/b"))).toEqual({ screen: "newPump", from: "a/b" });
    expect(readDeskAddress(newPumpHash())).toEqual({ screen: "newPump", from: undefined });
  });

  it("says a change of today by its hour and an older one by its day", async () => {
    const now = new Date(2026, 5, 15, 18, 0);
    const at = (...parts: [number, number, number, number]) => new Date(...parts).toISOString();
    expect(whenWords(at(2026, 5, 15, 9), now, english)).toBe("09:00");
    expect(whenWords(at(2026, 5, 14, 9), now, english)).toBe("Jun 14");
    expect(whenWords(at(2024, 5, 14, 9), now, english)).toBe("Jun 14, 2024");
    expect(whenWords(at(2026, 5, 14, 9), now, await loadWords("de"))).toBe("14. Juni");
  });

  it("says sizes in decimal multiples", () => {
    expect(sizeWords(999, english)).toBe("999\u00a0B");
    expect(sizeWords(1_450_000, english)).toBe("1.5\u00a0MB");
  });

  it("reads prices with a point or a comma and nothing else", () => {
    expect(readDecimal("0,31")).toBe(0.31);
    expect(readDecimal("1.15")).toBe(1.15);
    for (const text of ["", "-1", "1e3", "0x1", "1.2.3", "one"]) expect(readDecimal(text)).toBeUndefined();
  });

  it("makes a customer's address beside the page and keeps nothing of the page's own", () => {
    expect(linkAddress("share", "abc_-1", "https://shop.test/desk/?design=1#/jobs/2")).toBe(
      "https://shop.test/desk/share.html#abc_-1",
    );
  });

  it("tells the wait after too many tries", () => {
    const refused = (detail: string) =>
      signInWords({ ok: false, reason: "refused", problem: { type: "", title: "", status: 429, detail } }, english);
    expect(refused("Wait 40 seconds.")).toBe("Too many tries. Try again in 40 seconds.");
    expect(refused("Wait 5 minutes.")).toBe("Too many tries. Try again in 5 minutes.");
    expect(refused("Wait.")).toMatch(/few minutes/);
    expect(waitOf({ detail: "in 1 min" })).toBe(60);
  });

  it("says why a file was refused in the words of whoever looked at it", () => {
    const problem = { type: "", title: "", status: 415, detail: "It is an SVG; send a JPEG." };
    expect(problemWords(problem, english)).toBe("This kind of file is not taken. It is an SVG; send a JPEG.");
  });
});
