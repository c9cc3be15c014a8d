import { describe, expect, it } from "vitest";
import { editTogether } from "./editTogether.ts";

// At length: npm run soak -w @tidewright/web
describe("several editors of one design over lines that break", () => {
  it("all hold what the server holds in the end, and nothing that was acknowledged or made is lost", async () => {
    const { counts, stuck, wrong } = await editTogether({ jobs: 2, editorsPerJob: 4, seconds: 8, pace: 800 });
    expect(stuck).toEqual([]);
    expect(wrong).toEqual([]);
    expect(counts["acknowledged"]).toBeGreaterThan(20);
    expect(counts["unsent"]! + counts["unheard"]! + counts["dark"]!).toBeGreaterThan(5);
  }, 240_000);
});
