import { randomUUID } from "node:crypto";
import { type StoreChange, storeChange } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { endServed, exampleText, ifMatch, type ServedShop, servedShop } from "../testing/servedShop.ts";

afterEach(endServed);

/** Listens as a screen does, and hands out what was heard so far. */
async function listenTo({ address }: ServedShop, headers: Record<string, string> = {}) {
  const stop = new AbortController();
  const response = await fetch(new URL("api/events", address), { headers, signal: stop.signal });
  let text = "";
  let ended = false;
  const reading = (async () => {
    const decoder = new TextDecoder();
    try {
      for await (const part of response.body as unknown as AsyncIterable<Uint8Array>) text += decoder.decode(part);
    } catch {
      // The test hung up.
    }
    ended = true;
  })();
  return {
    response,
    text: () => text,
    ended: () => ended,
    changes: (): StoreChange[] =>
      [...text.matchAll(/event: change\nid: .+\ndata: (.+)\n\n/g)].map(([, data]) =>
        storeChange.parse(JSON.parse(data ?? "")),
      ),
    close: async () => {
      stop.abort();
      await reading;
    },
  };
}

async function until(claim: () => boolean, most = 20_000): Promise<void> {
  const start = performance.now();
  while (!claim()) {
    if (performance.now() - start > most) throw new Error("it did not come to pass");
    await new Promise((soon) => setTimeout(soon, 5));
  }
}

describe("the event stream", () => {
  it("shows a second screen an edit", async () => {
    const shop = await servedShop();
    const document: unknown = JSON.parse(exampleText("first-tank-110.json"));
    const job = (await (await shop.ask("POST", "api/jobs", { name: "Reef" })).json()) as { id: string };
    const made = await shop.ask("POST", `api/jobs/${job.id}/designs`, { name: "First", document });
    const { id } = (await made.json()) as { id: string };
    const screen = await listenTo(shop);
    expect(screen.response.headers.get("Content-Type")).toBe("text/event-stream");
    const edit = { document, editId: randomUUID() };
    expect((await shop.ask("POST", `api/designs/${id}/revisions`, edit, ifMatch(1))).status).toBe(201);
    await until(() => screen.changes().length > 0);
    expect(screen.changes()).toContainEqual({ kind: "design", id, jobId: job.id, revision: 2 });
    await screen.close();
  });

  it("tells of customers, jobs and settings too, and of nothing that was refused", async () => {
    const shop = await servedShop();
    const screen = await listenTo(shop);
    await shop.ask("POST", "api/jobs", { nme: "Reef" });
    await shop.ask("POST", "api/customers", { name: "Aldous Penn" });
    await shop.ask("POST", "api/jobs", { name: "Reef" });
    const kept = (await (await shop.ask("GET", "api/settings")).json()) as { settings: object };
    await shop.ask("PUT", "api/settings", kept.settings, ifMatch(0));
    await until(() => screen.changes().length === 3);
    expect(screen.changes().map(({ kind }) => kind)).toEqual(["customer", "job", "settings"]);
    await screen.close();
  });

  it("gives signs of life, and asks a screen that was away to fetch anew", async () => {
    const streams = { heartbeat: 20, most: 10, mostOfSender: 10, mostWaiting: 10_000 };
    const shop = await servedShop({ streams });
    const screen = await listenTo(shop, { "Last-Event-ID": "before" });
    await until(() => screen.text().includes(": still here\n\n"));
    expect(screen.text().startsWith("event: refetch\ndata: {}\n\n")).toBe(true);
    await screen.close();
  });

  it("is refused beyond so many of one sender, until one of them closes", async () => {
    const streams = { heartbeat: 1000, most: 10, mostOfSender: 2, mostWaiting: 10_000 };
    const shop = await servedShop({ streams });
    const first = await listenTo(shop);
    const second = await listenTo(shop);
    const third = await shop.ask("GET", "api/events");
    expect([third.status, third.headers.get("Retry-After")]).toEqual([429, "30"]);
    await first.close();
    const again = await untilOpen(shop);
    expect(again).toBe(200);
    await second.close();
  });

  it("ends with the session of who listens", async () => {
    const streams = { heartbeat: 20, most: 10, mostOfSender: 10, mostWaiting: 10_000 };
    const shop = await servedShop({ host: "0.0.0.0", streams });
    const by = { author: "set-up", at: new Date().toISOString() };
    const account = await shop.store.accounts.create({ name: "Mara", role: "readOnly", passwordHash: "x" }, by);
    if (!account.ok) throw new Error("no account");
    const expiresAt = new Date(Date.now() + 60_000).toISOString();
    const session = await shop.store.sessions.open(account.value.id, expiresAt, by);
    if (!session.ok) throw new Error("no session");
    expect((await shop.ask("GET", "api/events")).status).toBe(401);
    const screen = await listenTo(shop, { Cookie: `tidewright=${session.value.token}` });
    await until(() => screen.text().split(": still here").length > 3);
    expect(screen.ended()).toBe(false);
    await shop.store.sessions.close(session.value.token);
    await until(screen.ended);
  });

  it("opens nothing for a HEAD", async () => {
    const streams = { heartbeat: 1000, most: 1, mostOfSender: 1, mostWaiting: 10_000 };
    const shop = await servedShop({ streams });
    for (let tries = 0; tries < 3; tries++) expect((await shop.ask("HEAD", "api/events")).status).toBe(200);
  });

  it("ends when the server does", async () => {
    const shop = await servedShop();
    const screen = await listenTo(shop);
    shop.app.closeStreams();
    await until(screen.ended);
  });
});

/** A hang-up takes a moment to be noticed. */
async function untilOpen(shop: ServedShop): Promise<number> {
  for (let tries = 0; ; tries++) {
    const stop = new AbortController();
    const { status } = await fetch(new URL("api/events", shop.address), { signal: stop.signal });
    stop.abort();
    if (status === 200 || tries > 100) return status;
    await new Promise((soon) => setTimeout(soon, 10));
  }
}
