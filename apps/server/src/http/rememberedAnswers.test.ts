import { afterEach, describe, expect, it } from "vitest";
import { freshStore, removeFresh } from "../testing/freshDoors.ts";
import { rememberedAnswers } from "./rememberedAnswers.ts";

afterEach(removeFresh);

const by = { author: "Mara", at: "2026-03-01T09:00:00.000Z" };

describe("remembered answers", () => {
  it("are made once, until something is changed, and never tell of what was before an acknowledged change", async () => {
    const store = await freshStore();
    const remembered = rememberedAnswers(store);
    let made = 0;
    const total = async () => {
      const { text } = await remembered.get("jobs", async () => {
        made++;
        return { text: String((await store.jobs.search()).total), tag: undefined };
      });
      return Number(text);
    };
    expect([await total(), await total(), made]).toEqual([0, 0, 1]);
    for (let count = 1; count <= 20; count++) {
      // Some readers are under way while the change is made.
      const early = [total(), total()];
      await store.jobs.create({ name: `Job ${count}` }, by);
      expect(await total()).toBe(count);
      await Promise.all(early);
      expect(await total()).toBe(count);
    }
  });

  it("are not kept where they could not be made", async () => {
    const remembered = rememberedAnswers(await freshStore());
    const failing = () => Promise.reject(new Error("no disk"));
    await expect(remembered.get("a", failing)).rejects.toThrow("no disk");
    expect(await remembered.get("a", async () => ({ text: "good", tag: undefined }))).toMatchObject({ text: "good" });
  });

  it("are forgotten when they grow too many", async () => {
    const remembered = rememberedAnswers(await freshStore());
    let made = 0;
    const ask = (key: string) =>
      remembered.get(key, async () => {
        made++;
        return { text: "x".repeat(5_000_000), tag: undefined };
      });
    for (const key of ["a", "a", "b", "c", "d", "a"]) await ask(key);
    expect(made).toBe(5);
  });
});
