import type { DesignHead, Job, Revision, RevisionEntry } from "@tidewright/protocol";
import { openStore } from "@tidewright/store";
import { afterEach, describe, expect, it } from "vitest";
import { endServed, exampleText, ifMatch, servedShop } from "../testing/servedShop.ts";

afterEach(endServed);

describe("a server whose disk is full", () => {
  it("says so of each edit, keeps what it has, and goes on where it stood once there is room", async () => {
    const shop = await servedShop({ storeOptions: { maxPages: 250 } });
    const { ask } = shop;
    const read = async <Value>(answer: Promise<Response>): Promise<Value> => (await (await answer).json()) as Value;
    const document = JSON.parse(exampleText("waiting-room-reef.json")) as Record<string, unknown>;
    const step = (number: number) => ({ ...document, notes: `step ${number}` });
    const ballast = await read<Job>(ask("POST", "api/jobs", { name: "Old job", notes: "salt ".repeat(3900) }));
    for (const name of ["One", "Two", "Three"])
      await ask("POST", `api/jobs/${ballast.id}/designs`, { name, document: { ...document, notes: "x".repeat(9000) } });
    const job = await read<Job>(ask("POST", "api/jobs", { name: "Reef" }));
    const { id } = await read<DesignHead>(ask("POST", `api/jobs/${job.id}/designs`, { name: "A", document: step(1) }));
    const append = (number: number, editId: string = crypto.randomUUID()) =>
      ask("POST", `api/designs/${id}/revisions`, { document: step(number), editId }, ifMatch(number - 1));
    let kept = 1;
    let answer = await append(kept + 1);
    while (answer.status === 201 && kept < 500) answer = await append(++kept + 1);

    // Not once but each time, and always with the same clear sentence.
    const waiting = crypto.randomUUID();
    for (let tries = 0; tries < 5; tries++) answer = await append(kept + 1, waiting);
    expect(answer.status).toBe(507);
    expect(answer.headers.get("Content-Type")).toBe("application/problem+json");
    expect(await answer.json()).toEqual({
      type: "urn:tidewright:problem:store-disk-full",
      title: "The disk of the server is full",
      status: 507,
      detail: expect.stringMatching(/^nothing was kept of this change.+unharmed; free some space/),
    });
    const history = async () =>
      (await read<{ items: RevisionEntry[] }>(ask("GET", `api/designs/${id}/revisions`))).items;
    expect((await history()).map(({ number }) => number)).toEqual(Array.from({ length: kept }, (_, i) => kept - i));
    for (let number = 1; number <= kept; number++)
      expect((await read<Revision>(ask("GET", `api/designs/${id}/revisions/${number}`))).document).toEqual(
        step(number),
      );

    expect((await ask("DELETE", `api/jobs/${ballast.id}`, undefined, ifMatch(1))).status).toBeLessThan(300);
    expect((await append(kept + 1, waiting)).status).toBe(201);
    expect((await read<{ latest: Revision }>(ask("GET", `api/designs/${id}`))).latest).toMatchObject({
      number: kept + 1,
      editId: waiting,
      document: step(kept + 1),
    });
    // As another program would find it.
    await shop.store.close();
    const again = await openStore(`${shop.folder}/data`);
    expect((await again.designs.latest(id))?.document).toEqual(step(kept + 1));
    await again.close();
  });
});
