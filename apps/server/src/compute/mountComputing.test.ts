import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endServed, exampleText, type ServedShop, servedShop } from "../testing/servedShop.ts";

const reef = exampleText("waiting-room-reef.json");
let shop: ServedShop;
beforeAll(async () => {
  shop = await servedShop();
});
afterAll(endServed);

const post = (path: string, body: string, headers: Record<string, string> = {}) =>
  shop.ask("POST", path, body, headers);

describe("the answers of hydraulics", () => {
  it("give a network in SI", async () => {
    const response = await post("api/network", exampleText("networks/01-single-pipe.json"));
    expect(response.status).toBe(200);
    expect(await response.json()).toMatchObject({ status: "converged" });
  });

  it.each(["api/assess", "api/rank", "api/levers"])("tell of a sound design at %s", async (path) => {
    const response = await post(path, reef);
    expect(response.status).toBe(200);
    expect(response.headers.get("Content-Type")).toBe("application/json");
    const answer = (await response.json()) as { findings?: unknown[]; candidates?: unknown[] } & unknown[];
    expect((answer.findings ?? answer.candidates ?? answer).length).toBeGreaterThan(0);
  });

  it("play scenarios of their own and of the asker, and the whole sweep", async () => {
    const half = await post("api/whatif?scenario=drainHalfBlocked:1&film=false", reef);
    expect(await half.json()).toMatchObject({ scenario: { id: "drainHalfBlocked:1" }, status: "finished" });
    const storm = exampleText("scenarios/storm-night.json");
    const own = await post("api/whatif/own", `{ "design": ${reef}, "scenario": ${storm} }`);
    expect(own.status).toBe(200);
    expect(await own.json()).toMatchObject({ scenario: { subjects: ["Storm night"] }, film: {} });
    const sweep = (await (await post("api/safety?days=2", reef)).json()) as { rows: unknown[]; answers: object };
    expect(sweep.rows.length).toBeGreaterThan(5);
    expect(sweep.answers).toMatchObject({ days: 2 });
  });

  it("tell where in a body of two documents the problems are", async () => {
    const paths = async (body: string) => {
      const response = await post("api/whatif/own", body);
      expect(response.status).toBe(422);
      return ((await response.json()) as { problems: { path: string }[] }).problems.map(({ path }) => path);
    };
    expect(await paths("{}")).toEqual(["/design", "/scenario"]);
    expect(await paths('{ "design": { "tidewright": 9 }, "scenario": {} }')).toEqual(["/design/tidewright"]);
    expect(await paths(`{ "design": ${reef}, "scenario": { "tidewright": 1 } }`)).toEqual(["/scenario/scenario"]);
  });

  it("tell every problem of a document as RFC 9457 has it", async () => {
    const response = await post("api/assess", '{ "tidewright": 1, "name": "" }');
    expect(response.status).toBe(422);
    expect(response.headers.get("Content-Type")).toBe("application/problem+json");
    const details = (await response.json()) as { status: number; type: string; problems: { path: string }[] };
    expect(details).toMatchObject({ status: 422, type: "urn:tidewright:problem:bad-document" });
    const paths = details.problems.map((problem) => problem.path);
    for (const path of ["/name", "/water", "/display", "/loops"]) expect(paths).toContain(path);
  });

  it.each([
    ["a loop that is not there", "api/rank?loop=9&pairs=maybe", reef, {}, 422],
    ["a scenario that is not there", "api/whatif?scenario=flood", reef, {}, 422],
    ["a film that is neither wanted nor not", "api/whatif?film=maybe", reef, {}, 422],
    ["days beyond reach", "api/safety?days=100", reef, {}, 422],
    ["more than 10 MB", "api/network", "x".repeat(10_000_001), {}, 413],
    ["a plain form from another page", "api/assess", reef, { "Content-Type": "text/plain" }, 415],
    ["a path that is not there", "api/nothing", "{}", {}, 404],
  ])("are refused for %s", async (_what, path, body, headers, status) => {
    const response = await post(path, body, headers);
    expect(response.status).toBe(status);
    expect(response.headers.get("Content-Type")).toBe("application/problem+json");
  });

  it("leave the store's thread free: a list is answered while a sweep is computed", async () => {
    let done = false;
    const sweep = post("api/safety?days=60", reef).then(async (response) => {
      await response.text();
      done = true;
    });
    let answered = 0;
    while (!done && answered < 20) {
      expect((await shop.ask("GET", "api/jobs")).status).toBe(200);
      if (!done) answered++;
    }
    await sweep;
    // On the store's own thread the first list would come after the sweep.
    expect(answered).toBeGreaterThan(2);
  });
});
