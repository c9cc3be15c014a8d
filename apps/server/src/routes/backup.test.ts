import { randomUUID } from "node:crypto";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openStore, restore } from "@tidewright/store";
import { Hono } from "hono";
import { afterEach, describe, expect, it } from "vitest";
import { endServed, exampleText, ifMatch, servedShop } from "../testing/servedShop.ts";
import { mountBackup } from "./backup.ts";

afterEach(endServed);

describe("a backup", () => {
  it("holds every edit that was acknowledged before it began, while others go on", async () => {
    const { ask, folder } = await servedShop();
    const document: unknown = JSON.parse(exampleText("first-tank-110.json"));
    const job = (await (await ask("POST", "api/jobs", { name: "Reef" })).json()) as { id: string };
    const made = await ask("POST", `api/jobs/${job.id}/designs`, { name: "First", document });
    const { id } = (await made.json()) as { id: string };
    let revision = 1;
    let going = true;
    const editing = (async () => {
      while (going) {
        const edit = { document, editId: randomUUID() };
        const answer = await ask("POST", `api/designs/${id}/revisions`, edit, ifMatch(revision));
        expect(answer.status).toBe(201);
        revision++;
      }
    })();
    while (revision < 20) await new Promise((soon) => setTimeout(soon, 5));
    const acknowledged = revision;
    const response = await ask("POST", "api/backup");
    expect(response.status).toBe(200);
    expect(response.headers.get("Content-Disposition")).toMatch(/^attachment; filename="tidewright-\d{4}-/);
    const bytes = new Uint8Array(await response.arrayBuffer());
    expect(bytes.byteLength).toBe(Number(response.headers.get("Content-Length")));
    const meanwhile = revision;
    going = false;
    await editing;
    const leftovers = () => readdirSync(folder).filter((name) => name.startsWith("tidewright-backup-"));
    await expect.poll(leftovers).toEqual([]);

    const place = mkdtempSync(join(tmpdir(), "tidewright-restored-"));
    try {
      writeFileSync(join(place, "backup"), bytes);
      await restore(join(place, "backup"), join(place, "data"));
      const store = await openStore(join(place, "data"));
      const found = await store.designs.find(id);
      const history = await store.designs.history(id);
      await store.close();
      expect(found?.revision).toBeGreaterThanOrEqual(acknowledged);
      expect(found?.revision).toBeLessThanOrEqual(meanwhile + 1);
      expect(history.map(({ number }) => number)).toEqual(
        Array.from({ length: history.length }, (_, index) => history.length - index),
      );
    } finally {
      rmSync(place, { recursive: true, force: true });
    }
  });

  it("clears away at the start what a killed server left of one, and nothing else", async () => {
    const { app, folder } = await servedShop();
    mkdirSync(join(folder, "tidewright-backup-x1"));
    mountBackup({ ...app, hono: new Hono(), mounted: new Set() }, folder);
    expect(existsSync(join(folder, "tidewright-backup-x1"))).toBe(false);
    expect(existsSync(join(folder, "data"))).toBe(true);
  });
});
