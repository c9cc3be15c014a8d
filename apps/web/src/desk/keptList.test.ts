import { describe, expect, it } from "vitest";
import type { Answered } from "../api/ask.ts";
import { keptList, type ListCache } from "./keptList.ts";

interface Row {
  readonly id: string;
}
type Page = { readonly items: readonly Row[]; readonly total: number };
const rows = (count: number): Row[] => Array.from({ length: count }, (_, i) => ({ id: String(i) }));

function fakeCache(kept?: unknown): ListCache & { kept: unknown } {
  const cache = {
    kept,
    get: async () => cache.kept,
    put: async (_: string, value: unknown) => {
      cache.kept = value;
    },
  };
  return cache;
}
const list = (page: (offset: number) => Promise<Answered<Page>>, cache = fakeCache(), one?: Answered<Row>) =>
  keptList<Row>({
    name: "rows",
    page,
    one: async () => one ?? { ok: false, reason: "unreachable" },
    cache,
    now: () => "2026-01-02T03:04:05.000Z",
  });
const served =
  (all: readonly Row[]) =>
  async (offset: number): Promise<Answered<Page>> => ({
    ok: true,
    value: { items: all.slice(offset, offset + 500), total: all.length },
    version: undefined,
  });

describe("a list of the shop", () => {
  it("loads every page of a thousand and more", async () => {
    const keeper = list(served(rows(1203)));
    await keeper.refresh();
    expect(keeper.store.get()).toMatchObject({ total: 1203, state: "whole" });
    expect(keeper.store.get().items).toHaveLength(1203);
  });

  it("has an entry once that moved between two pages meanwhile", async () => {
    const all = rows(600);
    const keeper = list(async (offset) => ({
      ok: true,
      value: { items: offset === 0 ? all.slice(0, 500) : all.slice(499, 600), total: 600 },
      version: undefined,
    }));
    await keeper.refresh();
    expect(new Set(keeper.store.get().items.map(({ id }) => id)).size).toBe(keeper.store.get().items.length);
  });

  it("shows the list of the last visit while the server is out of reach", async () => {
    const cache = fakeCache({ items: rows(3), asOf: "2026-01-01T00:00:00.000Z" });
    const keeper = list(async () => ({ ok: false, reason: "unreachable" }), cache);
    await keeper.refresh();
    expect(keeper.store.get()).toMatchObject({ state: "unreachable", total: 3, asOf: "2026-01-01T00:00:00.000Z" });
  });

  it("keeps what it shows for the next visit", async () => {
    const cache = fakeCache();
    await list(served(rows(2)), cache).refresh();
    expect(cache.kept).toEqual({ items: rows(2), asOf: "2026-01-02T03:04:05.000Z" });
  });

  it("lets go of an entry that is gone", async () => {
    const gone = { type: "", title: "", status: 404, detail: "" };
    const keeper = list(served(rows(3)), fakeCache(), { ok: false, reason: "refused", problem: gone });
    await keeper.refresh();
    await keeper.refreshOne("1");
    expect(keeper.store.get().items.map(({ id }) => id)).toEqual(["0", "2"]);
  });
});
