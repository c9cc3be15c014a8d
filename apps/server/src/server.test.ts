import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { buildApp } from "./app.ts";
import { listen } from "./listen.ts";

const folder = mkdtempSync(join(tmpdir(), "tidewright-"));
const root = join(folder, "bench");
mkdirSync(root);
writeFileSync(join(root, "index.html"), "<!doctype html><title>bench</title>");
writeFileSync(join(folder, "secret.txt"), "secret");
const app = buildApp(root);
const at = "http://127.0.0.1:4870";
const examples = new URL("../../../../examples/", import.meta.url);
const reef = readFileSync(new URL("waiting-room-reef.json", examples), "utf8");
const network = readFileSync(new URL("networks/01-single-pipe.json", examples), "utf8");

const post = async (path: string, body: string, headers: Record<string, string> = {}) =>
  app.request(`${at}${path}`, {
    method: "POST",
    body,
    headers: { "Content-Type": "application/json", ...headers },
  });

afterAll(() => rmSync(folder, { recursive: true }));

describe("the server", () => {
  it("serves the bench under a policy that lets in nothing foreign", async () => {
    const response = await app.request(`${at}/`);
    expect(await response.text()).toContain("<title>bench</title>");
    const policy = response.headers.get("Content-Security-Policy") ?? "";
    expect(policy).toContain("default-src 'self'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
  });

  it.each(["/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt", "/%2e%2e%2fsecret.txt"])(
    "keeps what lies beside the bench to itself: %s",
    async (path) => {
      const response = await app.request(`${at}${path}`);
      expect(response.status).toBeGreaterThanOrEqual(400);
      expect(await response.text()).not.toBe("secret");
    },
  );

  it("answers a network in SI", async () => {
    const response = await post("/api/network", network);
    expect(response.status).toBe(200);
    expect(await response.json()).toMatchObject({ status: "converged" });
  });

  it.each(["/api/assess", "/api/rank", "/api/levers"])("answers a sound design at %s", async (path) => {
    const response = await post(path, reef);
    expect(response.status).toBe(200);
    expect(response.headers.get("Content-Type")).toBe("application/json");
    const answer = (await response.json()) as { findings?: unknown[]; candidates?: unknown[] } & unknown[];
    expect((answer.findings ?? answer.candidates ?? answer).length).toBeGreaterThan(0);
  });

  it("plays scenarios of its own and of the asker, and the whole sweep", async () => {
    const half = await post("/api/whatif?scenario=drainHalfBlocked:1&film=false", reef);
    expect(await half.json()).toMatchObject({ scenario: { id: "drainHalfBlocked:1" }, status: "finished" });
    const storm = readFileSync(new URL("scenarios/storm-night.json", examples), "utf8");
    const own = await post("/api/whatif/own", `{ "design": ${reef}, "scenario": ${storm} }`);
    expect(own.status).toBe(200);
    expect(await own.json()).toMatchObject({ scenario: { subjects: ["Storm night"] }, film: {} });
    const sweep = (await (await post("/api/safety?days=2", reef)).json()) as { rows: unknown[]; answers: object };
    expect(sweep.rows.length).toBeGreaterThan(5);
    expect(sweep.answers).toMatchObject({ days: 2 });
  });

  it("tells where in a body of two documents the problems are", async () => {
    const paths = async (body: string) => {
      const response = await post("/api/whatif/own", body);
      expect(response.status).toBe(422);
      return ((await response.json()) as { problems: { path: string }[] }).problems.map(({ path }) => path);
    };
    expect(await paths("{}")).toEqual(["/design", "/scenario"]);
    expect(await paths('{ "design": { "tidewright": 9 }, "scenario": {} }')).toEqual(["/design/tidewright"]);
    expect(await paths(`{ "design": ${reef}, "scenario": { "tidewright": 1 } }`)).toEqual(["/scenario/scenario"]);
  });

  it("tells every problem of a document as RFC 9457 has it", async () => {
    const response = await post("/api/assess", '{ "tidewright": 1, "name": "" }');
    expect(response.status).toBe(422);
    expect(response.headers.get("Content-Type")).toBe("application/problem+json");
    const details = (await response.json()) as { status: number; type: string; problems: { path: string }[] };
    expect(details).toMatchObject({ status: 422, type: "urn:tidewright:problem:bad-input" });
    const paths = details.problems.map((problem) => problem.path);
    for (const path of ["/name", "/water", "/display", "/loops"]) expect(paths).toContain(path);
  });

  it.each([
    ["a loop that is not there", "/api/rank?loop=9&pairs=maybe", reef, {}, 422],
    ["a scenario that is not there", "/api/whatif?scenario=flood", reef, {}, 422],
    ["a film that is neither wanted nor not", "/api/whatif?film=maybe", reef, {}, 422],
    ["days beyond reach", "/api/safety?days=100", reef, {}, 422],
    ["more than 10 MB", "/api/network", "x".repeat(10_000_001), {}, 413],
    ["a plain form from another page", "/api/assess", reef, { "Content-Type": "text/plain" }, 415],
    ["a path that is not there", "/api/nothing", "{}", {}, 404],
  ])("refuses %s", async (_what, path, body, headers, status) => {
    const response = await post(path, body, headers);
    expect(response.status).toBe(status);
    expect(response.headers.get("Content-Type")).toBe("application/problem+json");
  });

  it("answers to this machine's own names only", async () => {
    expect((await app.request("http://tank.example/healthz")).status).toBe(421);
    expect((await app.request("http://localhost:4870/healthz")).status).toBe(200);
  });

  it("describes every route it has", async () => {
    const document = (await (await app.request(`${at}/api/openapi.json`)).json()) as {
      openapi: string;
      paths: Record<string, unknown>;
      components: { schemas: Record<string, unknown> };
    };
    expect(document.openapi).toMatch(/^3\.1\./);
    const served = app.routes
      .filter(({ method, path }) => ["GET", "POST"].includes(method) && !path.includes("*"))
      .map(({ path }) => path);
    expect(Object.keys(document.paths).sort()).toEqual([...new Set(served)].sort());
    const references = JSON.stringify(document.paths).matchAll(/#\/components\/schemas\/(\w+)/g);
    for (const [, name] of references) expect(document.components.schemas).toHaveProperty(name ?? "");
  });

  it("takes the next free port where the wished one is taken, and listens to this machine only", async () => {
    const taken = createServer();
    await new Promise<void>((resolve) => taken.listen(0, "127.0.0.1", resolve));
    const { port } = taken.address() as AddressInfo;
    const { server, port: bound } = await listen(app, port);
    try {
      expect(bound).toBeGreaterThan(port);
      expect((server.address() as AddressInfo).address).toBe("127.0.0.1");
    } finally {
      server.close();
      taken.close();
    }
  });
});
