import { describe, expect, it } from "vitest";
import { killServer } from "./killServer.ts";

// At length: npm run soak -w @tidewright/server
describe("the server killed under a stream of edits", () => {
  it("shows every acknowledged edit with its exact document, and a history without gaps, after each of five kills", async () => {
    const figures = await killServer(5, { database: process.env["DATABASE_URL"] });
    expect(figures.wrong).toEqual([]);
    expect(figures.rounds).toBe(5);
    expect(figures.killedInStart).toBe(1);
    expect(figures.acknowledged).toBeGreaterThan(20);
  }, 240_000);
});
