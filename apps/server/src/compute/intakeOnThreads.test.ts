import { afterEach, describe, expect, it } from "vitest";
import { endServed, type ServedShop, servedShop } from "../testing/servedShop.ts";
import { type ThreadPool, threadPool } from "./threadPool.ts";

afterEach(endServed);

/** Sends a customer's answers by a new link. */
async function sendIntake({ store, ask }: ServedShop): Promise<Response> {
  const at = new Date();
  const expiresAt = new Date(at.getTime() + 3_600_000).toISOString();
  const made = await store.links.create({ kind: "intake", expiresAt }, { author: "Mara", at: at.toISOString() });
  if (!made.ok) throw new Error("no link");
  const body = {
    name: "Aldous Penn",
    contact: "aldous@penn.example",
    notes: "",
    answers: { tank: { volume: { value: 400, unit: "L" } } },
  };
  return ask("POST", "api/intake", body, { Authorization: `Link ${made.value.token}` });
}

describe("a customer's intake", () => {
  it("is computed on a thread: others are asked and answered between its question and its answer", async () => {
    const threads = threadPool(1);
    const order: string[] = [];
    let begun = (): void => {};
    let goOn = (): void => {};
    const isBegun = new Promise<void>((resolve) => {
      begun = resolve;
    });
    const mayGoOn = new Promise<void>((resolve) => {
      goOn = resolve;
    });
    const held: ThreadPool = {
      run: async (request) => {
        order.push(`${request.computation} begun`);
        const answer = threads.run(request);
        begun();
        await mayGoOn;
        return answer;
      },
      close: threads.close,
    };
    const shop = await servedShop({ threads: held });
    const intake = sendIntake(shop).then((response) => {
      order.push(`intake ${response.status}`);
    });
    await isBegun;
    order.push(`list ${(await shop.ask("GET", "api/jobs")).status}`);
    order.push(`list ${(await shop.ask("GET", "api/customers")).status}`);
    goOn();
    await intake;
    expect(order).toEqual(["firstDesign begun", "list 200", "list 200", "intake 201"]);
    const [job] = (await shop.store.jobs.search()).items;
    expect(await shop.store.designs.ofJob(job!.id)).toHaveLength(1);
  });

  it("leaves the store's thread free all the while: many lists are answered before it is", async () => {
    const shop = await servedShop();
    let done = false;
    const intake = sendIntake(shop).then((response) => {
      done = true;
      return response.status;
    });
    let answered = 0;
    while (!done && answered < 20) {
      expect((await shop.ask("GET", "api/jobs")).status).toBe(200);
      if (!done) answered++;
    }
    expect(await intake).toBe(201);
    // On the store's own thread only those would be answered that came before it began.
    expect(answered).toBe(20);
  });
});
