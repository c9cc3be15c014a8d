import { describe, expect, it } from "vitest";
import type { Maker } from "../state/maker.ts";
import { draftKey, dropDrafts, readDraftKey, typedDrafts } from "./typedDrafts.ts";

const ina: Maker = { who: "account", id: "a1", name: "Ina" };

/** A device's storage with these entries. */
function storageOf(entries: Readonly<Record<string, string>>): Storage {
  const kept: Record<string, unknown> = { ...entries };
  const methods = {
    getItem: (key: string) => (kept[key] as string | undefined) ?? null,
    setItem: (key: string, text: string) => {
      kept[key] = text;
    },
    removeItem: (key: string) => {
      delete kept[key];
    },
  };
  for (const [name, value] of Object.entries(methods)) Object.defineProperty(kept, name, { value, enumerable: false });
  return kept as unknown as Storage;
}

describe("what was typed and waits on a device", () => {
  it("has a place for each person and record", () => {
    expect(draftKey("job.j7", ina)).toBe("tidewright.typed.a1.job.j7");
    expect(draftKey("job.j7", { who: "thisMachine" })).toBe("tidewright.typed.thisMachine.job.j7");
    expect(readDraftKey("tidewright.typed.a1.job.j7")).toEqual({ by: "a1", record: "job", id: "j7" });
    expect(readDraftKey("tidewright.typed.a1.settings")).toEqual({ by: "a1", record: "settings", id: "" });
    expect(readDraftKey("tidewright.worksHere")).toBeUndefined();
  });

  it("of before it bore a name is still found", () => {
    expect(readDraftKey("tidewright.typed.customer.c.1")).toEqual({ by: undefined, record: "customer", id: "c.1" });
    const storage = storageOf({ "tidewright.typed.job.j7": '{"base":{"name":"Reef"},"pending":{"notes":"lift"}}' });
    expect(typedDrafts(storage)).toMatchObject([{ maker: { who: "nobody" }, record: "job", id: "j7" }]);
  });

  it("says whose it is, and leaves alone what cannot be read", () => {
    const storage = storageOf({
      [draftKey("job.j7", ina)]: JSON.stringify({ base: { name: "Reef" }, pending: { notes: "lift" }, maker: ina }),
      "tidewright.typed.a1.job.j8": "{",
      "something else": "1",
    });
    expect(typedDrafts(storage)).toEqual([
      {
        key: "tidewright.typed.a1.job.j7",
        record: "job",
        id: "j7",
        maker: ina,
        base: { name: "Reef" },
        pending: { notes: "lift" },
      },
    ]);
  });

  it("goes with the record it was typed into, whoever typed it", () => {
    const draft = JSON.stringify({ base: {}, pending: {} });
    const storage = storageOf({
      "tidewright.typed.customer.c1": draft,
      "tidewright.typed.a1.customer.c1": draft,
      "tidewright.typed.a1.customer.c2": draft,
    });
    dropDrafts(storage, "customer", "c1");
    expect(Object.keys(storage)).toEqual(["tidewright.typed.a1.customer.c2"]);
  });
});
