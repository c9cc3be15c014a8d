import type { Worker } from "node:worker_threads";
import { afterEach, describe, expect, it } from "vitest";
import { exampleText } from "../testing/servedShop.ts";
import { type ThreadPool, threadPool } from "./threadPool.ts";

let pool: ThreadPool | undefined;
afterEach(() => pool?.close());

const network = {
  computation: "network",
  text: exampleText("networks/01-single-pipe.json"),
  query: {},
  pumps: [],
} as const;

describe("the threads that compute", () => {
  it("answer one request after the other, in the order they were asked", async () => {
    pool = threadPool(1);
    const order: string[] = [];
    const asked = ["first", "second", "third"].map(async (name) => {
      const answer = await pool!.run(name === "second" ? { ...network, text: "{" } : network);
      order.push(name);
      return answer.ok;
    });
    expect(await Promise.all(asked)).toEqual([true, false, true]);
    expect(order).toEqual(["first", "second", "third"]);
  });

  it("refuse what would wait behind too many", async () => {
    pool = threadPool(1, 1);
    const first = pool.run(network);
    const second = pool.run(network);
    await expect(pool.run(network)).rejects.toMatchObject({ details: { status: 503 } });
    expect([(await first).ok, (await second).ok]).toEqual([true, true]);
  });

  it("may fail while nobody waits for them, and the next request is answered by another", async () => {
    const started: Worker[] = [];
    const note = (worker: Worker) => started.push(worker);
    process.on("worker", note);
    try {
      pool = threadPool(1, 8, 30_000);
      expect(await pool.run(network)).toMatchObject({ ok: true });
      // What Node tells of a thread that ran out of memory, without anything to catch it elsewhere.
      started[0]!.emit("error", new Error("out of memory"));
      await started[0]!.terminate();
      expect(await pool.run(network)).toMatchObject({ ok: true });
      expect(started.length).toBe(2);
    } finally {
      process.off("worker", note);
    }
  });

  it("give up a computation that does not end, and go on with the next", async () => {
    pool = threadPool(1, 8, 1);
    expect(await pool.run(network)).toEqual({ ok: false, fault: "no answer within 0.001 s" });
    expect(await pool.run(network)).toMatchObject({ ok: false });
  });
});
