import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { diskWrites } from "./diskWrites.ts";

describe("writes to a device's disk", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  /** A disk that answers when it is told to. */
  function disk() {
    const asked: { readonly row: string; answer(): void; refuse(): void }[] = [];
    const put = (row: string) =>
      new Promise<void>((answer, refuse) => asked.push({ row, answer, refuse: () => refuse(new Error("full")) }));
    return { asked, put };
  }
  const soon = () => vi.advanceTimersByTimeAsync(1);

  it("go one after the other", async () => {
    const { asked, put } = disk();
    const writes = diskWrites(put, () => {}, 1000);
    void writes.write("one");
    void writes.write("two");
    await soon();
    expect(asked.map(({ row }) => row)).toEqual(["one"]);
    expect(writes.writing()).toBe(true);
    asked[0]!.answer();
    await soon();
    asked[1]!.answer();
    await writes.written();
    expect([writes.writing(), writes.onDisk()]).toEqual([false, true]);
  });

  it("that are refused are done, and the next one is tried", async () => {
    const { asked, put } = disk();
    const writes = diskWrites(put, () => {}, 1000);
    void writes.write("one");
    await soon();
    asked[0]!.refuse();
    await writes.written();
    expect(writes.onDisk()).toBe(false);
    void writes.write("two");
    await soon();
    asked[1]!.answer();
    await writes.written();
    expect(writes.onDisk()).toBe(true);
  });

  it("that never settle hold nobody up for longer than the limit, and none after them at all", async () => {
    const { asked, put } = disk();
    const told: boolean[] = [];
    const writes = diskWrites(put, () => told.push(writes.onDisk()), 1000);
    const done: string[] = [];
    void writes.write("one").then(() => done.push("one"));
    void writes.write("two").then(() => done.push("two"));
    await vi.advanceTimersByTimeAsync(999);
    expect(done).toEqual([]);
    await vi.advanceTimersByTimeAsync(1);
    expect(done).toEqual(["one", "two"]);
    void writes.write("three").then(() => done.push("three"));
    await vi.advanceTimersByTimeAsync(0);
    expect(done).toEqual(["one", "two", "three"]);
    expect([writes.writing(), writes.onDisk()]).toEqual([false, false]);
    expect(told).toEqual([false, false]);
    expect(asked).toHaveLength(1);
  });

  it("catch up with the newest when the disk answers after all", async () => {
    const { asked, put } = disk();
    const writes = diskWrites(put, () => {}, 1000);
    void writes.write("one");
    await vi.advanceTimersByTimeAsync(1000);
    void writes.write("two");
    void writes.write("three");
    asked[0]!.answer();
    await soon();
    expect(asked.map(({ row }) => row)).toEqual(["one", "three"]);
    asked[1]!.answer();
    await writes.written();
    expect(writes.onDisk()).toBe(true);
  });
});
