import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Answered } from "../api/ask.ts";
import { recordKeeper } from "./recordKeeper.ts";
import { sendLeft } from "./sendLeft.ts";

interface Note {
  readonly [key: string]: unknown;
  readonly name: string;
  readonly notes: string;
  readonly version: number;
}
type Fields = { name?: string; notes?: string };

/** A server of one record: refuses a change to another version than its own, as If-Match does. */
function fakeServer(record: Note) {
  const state = { record, reachable: true, asked: 0 };
  const save = async (change: Partial<Fields>, version: number): Promise<Answered<Note>> => {
    state.asked += 1;
    await Promise.resolve();
    if (!state.reachable) return { ok: false, reason: "unreachable" };
    if (version !== state.record.version)
      return {
        ok: false,
        reason: "refused",
        problem: { type: "conflict", title: "", status: 412, detail: "", current: state.record },
      };
    state.record = { ...state.record, ...change, version: version + 1 };
    return { ok: true, value: state.record, version: state.record.version };
  };
  return { state, save };
}

function fakeStorage() {
  const kept = new Map<string, string>();
  return {
    kept,
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  };
}

const first: Note = { name: "Reef", notes: "", version: 1 };

describe("a record that keeps itself", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });
  const made = (record = first, drafts = fakeStorage()) => {
    const server = fakeServer(record);
    const keeper = recordKeeper<Note, Fields>({
      record,
      version: record.version,
      save: server.save,
      draftKey: "d",
      drafts,
    });
    return { ...server, keeper, drafts };
  };

  it("sends what was typed once, after a pause", async () => {
    const { keeper, state } = made();
    keeper.change({ notes: "o" });
    keeper.change({ notes: "oak" });
    await vi.advanceTimersByTimeAsync(1000);
    expect(state.asked).toBe(1);
    expect(state.record.notes).toBe("oak");
    expect(keeper.store.get().state).toBe("kept");
  });

  it("merges with what somebody else changed meanwhile", async () => {
    const { keeper, state } = made();
    state.record = { ...first, name: "Reef wall", version: 2 };
    keeper.change({ notes: "oak" });
    await vi.advanceTimersByTimeAsync(2000);
    expect(state.record).toMatchObject({ name: "Reef wall", notes: "oak", version: 3 });
    expect(keeper.store.get().record.name).toBe("Reef wall");
  });

  it("shows both texts where the same field was changed, sends neither, and takes the choice", async () => {
    for (const whose of ["mine", "theirs"] as const) {
      const { keeper, state } = made();
      state.record = { ...first, notes: "theirs", version: 2 };
      keeper.change({ notes: "mine" });
      await vi.advanceTimersByTimeAsync(2000);
      expect(keeper.store.get().conflicts).toEqual([{ field: "notes", mine: "mine", theirs: "theirs" }]);
      expect(state.record.notes).toBe("theirs");
      keeper.choose("notes", whose);
      await vi.advanceTimersByTimeAsync(2000);
      expect(state.record.notes).toBe(whose);
      expect(keeper.store.get()).toMatchObject({ state: "kept", conflicts: [], pending: {} });
    }
  });

  it("keeps typing on the device while the server is away, and sends it when it is back", async () => {
    const { keeper, state, drafts } = made();
    state.reachable = false;
    keeper.change({ notes: "cellar" });
    await vi.advanceTimersByTimeAsync(1000);
    expect(keeper.store.get().state).toBe("unreachable");
    expect(drafts.kept.get("d")).toContain("cellar");
    state.reachable = true;
    await vi.advanceTimersByTimeAsync(10_000);
    expect(state.record.notes).toBe("cellar");
    expect(drafts.kept.size).toBe(0);
  });

  it("brings back what a closed page had not sent", async () => {
    const { keeper, state, drafts } = made();
    state.reachable = false;
    keeper.change({ notes: "before the page closed" });
    await vi.advanceTimersByTimeAsync(1000);
    keeper.stop();
    const again = made(first, drafts);
    expect(again.keeper.store.get().pending).toEqual({ notes: "before the page closed" });
    await vi.advanceTimersByTimeAsync(1000);
    expect(again.state.record.notes).toBe("before the page closed");
  });

  it("keeps what is typed while an answer is on its way", async () => {
    const { keeper, state } = made();
    keeper.change({ notes: "a" });
    const sent = keeper.flush();
    keeper.change({ notes: "ab" });
    await sent;
    expect(keeper.store.get().pending).toEqual({ notes: "ab" });
    await vi.advanceTimersByTimeAsync(2000);
    expect(state.record.notes).toBe("ab");
  });

  it("takes in news without touching what is being typed", async () => {
    const { keeper } = made();
    keeper.change({ notes: "typing" });
    keeper.take({ ...first, name: "Renamed", version: 2 }, 2);
    expect(keeper.store.get()).toMatchObject({ record: { name: "Renamed" }, pending: { notes: "typing" } });
  });

  it("sends nothing while somebody else would be named, and keeps it on the device under whose it is", async () => {
    const here = { who: "a1" };
    const { state, save } = fakeServer(first);
    const drafts = fakeStorage();
    const keeper = recordKeeper<Note, Fields>({
      record: first,
      version: 1,
      save,
      draftKey: "d",
      drafts,
      maker: { who: "account", id: "a1", name: "Ina" },
      mayGo: () => here.who === "a1",
    });
    keeper.change({ notes: "Ina's" });
    here.who = "a2";
    await vi.advanceTimersByTimeAsync(30_000);
    keeper.stop();
    await vi.advanceTimersByTimeAsync(1000);
    expect(state.asked).toBe(0);
    expect(JSON.parse(drafts.kept.get("d") ?? "")).toMatchObject({
      pending: { notes: "Ina's" },
      maker: { id: "a1", name: "Ina" },
    });
  });

  it("sends what a closed page left when the desk opens again, and leaves a conflict for that page", async () => {
    for (const notes of ["", "theirs"]) {
      const { keeper, state, drafts, save } = made();
      state.reachable = false;
      keeper.change({ notes: "left behind" });
      await vi.advanceTimersByTimeAsync(1000);
      keeper.stop();
      await vi.advanceTimersByTimeAsync(1000);
      state.reachable = true;
      state.record = { ...first, notes, version: 2 };
      const source = {
        key: "d",
        load: async () => ({ ok: true as const, value: state.record, version: state.record.version }),
        save,
        concerns: () => false,
      };
      const sent = await sendLeft(["other", "d"], (key) => (key === "d" ? source : undefined), drafts, {
        who: "thisMachine",
      });
      await vi.advanceTimersByTimeAsync(10_000);
      expect({ sent, kept: state.record.notes, waits: drafts.kept.size }).toEqual(
        notes === "" ? { sent: 1, kept: "left behind", waits: 0 } : { sent: 0, kept: "theirs", waits: 1 },
      );
    }
  });
});
