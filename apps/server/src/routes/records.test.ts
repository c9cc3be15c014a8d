import { randomUUID } from "node:crypto";
import { type ProblemDetails, versionOf } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { endServed, exampleText, ifMatch, servedShop } from "../testing/servedShop.ts";

// Statuses: RFC 9110 (304, 400, 404, 412, 415, 422), RFC 6585 (428), RFC 9457 (problem details), RFC 4918 (507).

afterEach(endServed);

const reef = JSON.parse(exampleText("waiting-room-reef.json")) as { name: string };
const read = async <Value = Record<string, unknown>>(response: Response): Promise<Value> =>
  (await response.json()) as Value;
const problem = async (response: Response): Promise<ProblemDetails> => {
  expect(response.headers.get("Content-Type")).toBe("application/problem+json");
  const details = await read<ProblemDetails>(response);
  expect(details.status).toBe(response.status);
  return details;
};

describe("customers and jobs", () => {
  it("are made, found by words, read, changed and listed", async () => {
    const { ask } = await servedShop();
    const made = await ask("POST", "api/customers", { name: "Aldous Penn", contact: "at the shop" });
    expect(made.status).toBe(201);
    expect(versionOf(made.headers.get("ETag")!)).toBe(1);
    const customer = await read<{ id: string }>(made);
    expect(await read(await ask("GET", "api/customers?text=penn"))).toMatchObject({ total: 1 });
    expect(await read(await ask("GET", `api/customers/${customer.id}`))).toEqual(customer);
    const changed = await ask("PATCH", `api/customers/${customer.id}`, { notes: "Tuesdays" }, ifMatch(1));
    expect(await read(changed)).toMatchObject({ notes: "Tuesdays", version: 2, contact: "at the shop" });

    const job = await read<{ id: string }>(
      await ask("POST", "api/jobs", { name: "Reef by the window", customerId: customer.id }),
    );
    expect(await read(await ask("GET", "api/jobs?text=window%20aldous&stage=intake"))).toMatchObject({ total: 1 });
    expect(await read(await ask("GET", "api/jobs?stage=built"))).toEqual({ items: [], total: 0 });
    await ask("PATCH", `api/jobs/${job.id}`, { stage: "built" }, ifMatch(1));
    expect(await read(await ask("GET", `api/jobs/${job.id}`))).toMatchObject({
      stage: "built",
      customerName: "Aldous Penn",
    });
    expect((await ask("DELETE", `api/jobs/${job.id}`, undefined, ifMatch(2))).status).toBe(200);
    expect((await ask("GET", `api/jobs/${job.id}`)).status).toBe(404);
  });

  it("names customers of whom nothing was heard, and erases one on request", async () => {
    const { ask } = await servedShop();
    const { id } = await read<{ id: string }>(await ask("POST", "api/customers", { name: "Aldous Penn" }));
    const unused = await ask("GET", "api/customers/unused?since=2999-01-01T00:00:00.000Z");
    expect(await read(unused)).toMatchObject({ items: [{ id }] });
    expect(await read(await ask("POST", `api/customers/${id}/erasure`))).toMatchObject({ customerId: id });
    expect(JSON.stringify(await read(await ask("GET", "api/customers")))).not.toContain("Penn");
    expect((await ask("POST", "api/customers/nobody/erasure")).status).toBe(404);
  });

  it("answers a job that is made twice under one id with what is there", async () => {
    const { ask } = await servedShop();
    const id = randomUUID();
    await ask("POST", "api/jobs", { id, name: "First" });
    const again = await ask("POST", "api/jobs", { id, name: "Second" });
    expect(again.status).toBe(412);
    expect((await problem(again)).current).toMatchObject({ id, name: "First" });
  });
});

describe("a request that cannot be done", () => {
  it("is told every problem of path, query and body at once, each with place and fix", async () => {
    const { ask } = await servedShop();
    const bad = await problem(await ask("POST", "api/jobs", { stage: "dreaming", colour: "blue", customerId: 7 }));
    expect(bad.status).toBe(422);
    expect(bad.problems?.map(({ path }) => path).sort()).toEqual(["/colour", "/customerId", "/name", "/stage"]);
    for (const { message, fix } of bad.problems ?? []) expect([message, fix]).not.toContain("");
    const query = await problem(await ask("GET", "api/jobs?limit=5&limit=1&stage=x&colour=blue"));
    expect(query.problems?.map(({ path }) => path).sort()).toEqual(["?colour", "?limit", "?stage"]);
    const number = await problem(await ask("GET", "api/designs/x/revisions/first"));
    expect(number.problems?.map(({ path }) => path)).toEqual(["{number}"]);
  });

  it.each([
    ["no JSON", "{,", {}, 422],
    ["a body that is not announced as JSON", "{}", { "Content-Type": "text/plain" }, 415],
    ["a body of more than 10 MB", `{"name":"${"x".repeat(10_000_001)}"}`, {}, 413],
  ])("is refused for %s", async (_what, body, headers, status) => {
    const { ask } = await servedShop();
    expect((await problem(await ask("POST", "api/jobs", body, headers))).status).toBe(status);
  });

  it("is refused for a name of nothing that is there", async () => {
    const { ask } = await servedShop();
    for (const path of ["customers/x", "jobs/x", "jobs/x/designs", "designs/x", "designs/x/revisions", "nothing"]) {
      expect([path, (await problem(await ask("GET", `api/${path}`))).status]).toEqual([path, 404]);
    }
    expect((await ask("PATCH", "api/jobs/x", { name: "y" }, ifMatch(1))).status).toBe(404);
    expect((await ask("POST", "api/jobs/x/designs", { name: "y", document: reef })).status).toBe(404);
    expect((await ask("PUT", "api/designs/x/revisions/1/name", { name: "y" })).status).toBe(404);
    expect((await ask("POST", "api/designs/x/variants", { name: "y" })).status).toBe(404);
    expect((await ask("DELETE", "api/catalogue/note/x", undefined, ifMatch(1))).status).toBe(404);
  });

  it("is told when the disk has no room, and what was kept before is there", async () => {
    const { ask } = await servedShop({ storeOptions: { maxPages: 80 } });
    const notes = "salt ".repeat(3900);
    let kept = 0;
    let full: Response | undefined;
    for (let tries = 0; tries < 100 && full === undefined; tries++) {
      const response = await ask("POST", "api/jobs", { name: `Job ${tries}`, notes });
      if (response.status === 201) kept++;
      else full = response;
    }
    expect(full?.status).toBe(507);
    expect((await problem(full!)).title).toContain("disk");
    expect(await read(await ask("GET", "api/jobs"))).toMatchObject({ total: kept });
  });
});

describe("a tag", () => {
  it("must be sent with a change, must be one of ours, and the later of two writers gets what the first left", async () => {
    const { ask } = await servedShop();
    const { id } = await read<{ id: string }>(await ask("POST", "api/jobs", { name: "Reef" }));
    const path = `api/jobs/${id}`;
    expect((await problem(await ask("PATCH", path, { name: "A" }))).status).toBe(428);
    expect((await problem(await ask("PATCH", path, { name: "A" }, { "If-Match": "*" }))).status).toBe(400);
    expect((await problem(await ask("PATCH", path, { name: "A" }, { "If-Match": "7" }))).status).toBe(400);
    expect((await ask("PATCH", path, { name: "A" }, ifMatch(1))).headers.get("ETag")).toMatch(/^"2\./);
    const late = await problem(await ask("PATCH", path, { name: "B" }, ifMatch(1)));
    expect(late).toMatchObject({ status: 412, type: "urn:tidewright:problem:conflict", current: { name: "A" } });
  });

  it("spares an answer that is known", async () => {
    const { ask } = await servedShop();
    const { id } = await read<{ id: string }>(await ask("POST", "api/jobs", { name: "Reef" }));
    const tag = (await ask("GET", `api/jobs/${id}`)).headers.get("ETag")!;
    for (const sent of [tag, `"2", W/${tag}`]) {
      const known = await ask("GET", `api/jobs/${id}`, undefined, { "If-None-Match": sent });
      expect([known.status, await known.text(), known.headers.get("ETag")]).toEqual([304, "", tag]);
    }
    const other = await ask("GET", `api/jobs/${id}`, undefined, { "If-None-Match": '"1", W/"3"' });
    expect(other.status).toBe(200);
  });

  it("changes with everything that an answer shows, though the thing itself has no new version", async () => {
    const { ask } = await servedShop();
    const customer = await read<{ id: string }>(await ask("POST", "api/customers", { name: "Aldous Penn" }));
    const job = await read<{ id: string }>(await ask("POST", "api/jobs", { name: "Reef", customerId: customer.id }));
    const path = `api/jobs/${job.id}`;
    const first = (await ask("GET", path)).headers.get("ETag")!;
    const again = (tag: string, from = path) => ask("GET", from, undefined, { "If-None-Match": tag });
    await ask("PATCH", `api/customers/${customer.id}`, { name: "Aldous Penn-Marrow" }, ifMatch(1));
    const renamed = await again(first);
    expect(renamed.status).toBe(200);
    expect(await read(renamed)).toMatchObject({ customerName: "Aldous Penn-Marrow", version: 1 });
    const second = renamed.headers.get("ETag")!;
    expect((await again(second)).status).toBe(304);
    // A change of the job may be made from either: nothing that it overwrites has changed.
    expect((await ask("PATCH", path, { notes: "Tuesdays" }, { "If-Match": first })).status).toBe(200);
    expect((await again(second)).status).toBe(200);

    const made = await ask("POST", `${path}/designs`, { name: "First", document: reef });
    const revision = `api/designs/${(await read<{ id: string }>(made)).id}/revisions/1`;
    const unnamed = (await ask("GET", revision)).headers.get("ETag")!;
    await ask("PUT", `${revision}/name`, { name: "As offered" });
    expect(await read(await again(unnamed, revision))).toMatchObject({ number: 1, name: "As offered" });
  });
});

describe("designs", () => {
  const withDesign = async () => {
    const shop = await servedShop();
    const job = await read<{ id: string }>(await shop.ask("POST", "api/jobs", { name: "Reef" }));
    const made = await shop.ask("POST", `api/jobs/${job.id}/designs`, { name: "First", document: reef });
    expect(made.status).toBe(201);
    return { ...shop, jobId: job.id, design: await read<{ id: string }>(made) };
  };

  it("keep every revision, name some of them, and branch into variants", async () => {
    const { ask, design, jobId } = await withDesign();
    const path = `api/designs/${design.id}`;
    const second = { ...reef, name: "Second thoughts" };
    const added = await ask("POST", `${path}/revisions`, { document: second, editId: randomUUID() }, ifMatch(1));
    expect([added.status, versionOf(added.headers.get("ETag")!)]).toEqual([201, 2]);
    expect(await read(added)).toMatchObject({ number: 2, parent: 1, author: "this machine" });
    const opened = await ask("GET", path);
    expect(versionOf(opened.headers.get("ETag")!)).toBe(2);
    expect(await read(opened)).toMatchObject({ head: { revision: 2 }, latest: { number: 2, document: second } });
    expect(await read(await ask("GET", `${path}/revisions/1`))).toMatchObject({ document: reef });
    await ask("PUT", `${path}/revisions/1/name`, { name: "As offered" });
    const history = await read<{ items: { number: number; name: string | null }[] }>(
      await ask("GET", `${path}/revisions?limit=5`),
    );
    expect(history.items.map(({ number, name }) => [number, name])).toEqual([
      [2, null],
      [1, "As offered"],
    ]);
    const variant = await ask("POST", `${path}/variants`, { name: "Other pump", revision: 1 });
    expect(variant.status).toBe(201);
    expect(await read(variant)).toMatchObject({ variantOf: { designId: design.id, revision: 1 }, revision: 1 });
    const heads = await read<{ items: unknown[] }>(await ask("GET", `api/jobs/${jobId}/designs`));
    expect(heads.items).toHaveLength(2);
  });

  it("give the later of two editors the revision that the first one left, and take an edit sent twice once", async () => {
    const { ask, design } = await withDesign();
    const path = `api/designs/${design.id}/revisions`;
    const edit = { document: { ...reef, name: "Mine" }, editId: randomUUID() };
    await ask("POST", path, edit, ifMatch(1));
    const again = await ask("POST", path, edit, ifMatch(1));
    expect([again.status, versionOf(again.headers.get("ETag")!)]).toEqual([201, 2]);
    const late = await problem(
      await ask("POST", path, { document: { ...reef, name: "Theirs" }, editId: randomUUID() }, ifMatch(1)),
    );
    expect(late).toMatchObject({ status: 412, current: { number: 2, document: { name: "Mine" } } });
  });

  it("refuse a document that cannot be read, with every problem it has", async () => {
    const { ask, design, jobId } = await withDesign();
    const bad = { tidewright: 1, name: "" };
    const inBody = { document: bad, editId: randomUUID() };
    for (const response of [
      await ask("POST", `api/designs/${design.id}/revisions`, inBody, ifMatch(1)),
      await ask("POST", `api/jobs/${jobId}/designs`, { name: "Bad", document: bad }),
      await ask("POST", `api/designs/${design.id}/variants`, { name: "Bad", document: bad }),
    ]) {
      const { status, problems } = await problem(response);
      expect(status).toBe(422);
      const paths = problems?.map(({ path }) => path);
      for (const path of ["/document/name", "/document/water", "/document/loops"]) expect(paths).toContain(path);
    }
    expect(await read(await ask("GET", `api/designs/${design.id}`))).toMatchObject({ head: { revision: 1 } });
  });
});

describe("the shop", () => {
  it("keeps settings under a version, and its trail says who changed them", async () => {
    const { ask } = await servedShop();
    const { settings, version } = await read<{ settings: object; version: number }>(await ask("GET", "api/settings"));
    expect(version).toBe(0);
    const changed = await ask("PUT", "api/settings", { ...settings, name: "Pell & Wicken" }, ifMatch(0));
    expect(await read(changed)).toMatchObject({ settings: { name: "Pell & Wicken" }, version: 1 });
    expect((await ask("PUT", "api/settings", settings, ifMatch(0))).status).toBe(412);
    const bad = await problem(await ask("PUT", "api/settings", { name: 1 }, ifMatch(1)));
    expect(bad.problems?.length).toBeGreaterThan(4);
    const { items } = await read<{ items: { author: string; subjectKind: string }[] }>(await ask("GET", "api/audit"));
    expect(items[0]).toMatchObject({ author: "this machine", subjectKind: "settings" });
  });

  it("adds, changes and removes rows of its own, and its designs may refer to its pumps", async () => {
    const { ask } = await servedShop();
    const { demoCatalogue, findPump } = await import("@tidewright/catalogue");
    const pump = { ...findPump(demoCatalogue, "ferrow-c40")!, id: "house-pump" };
    const put = (id: string, data: unknown, version: number) =>
      ask("PUT", `api/catalogue/pump/${id}`, { data }, ifMatch(version));
    const bad = await problem(await put("house-pump", { ...pump, price: -1 }, 0));
    expect([bad.status, bad.problems?.[0]?.path]).toEqual([422, "/data/price"]);
    expect((await problem(await put("house-pump", { label: "?" }, 0))).status).toBe(422);

    const { id } = await read<{ id: string }>(await ask("POST", "api/jobs", { name: "Reef" }));
    const document = JSON.parse(exampleText("waiting-room-reef.json").replaceAll(/"tarnhelm-[\w-]+"/g, '"house-pump"'));
    const keep = () => ask("POST", `api/jobs/${id}/designs`, { name: "House pump", document });
    expect(JSON.stringify(document)).toContain("house-pump");
    expect((await keep()).status).toBe(422);
    expect(versionOf((await put("house-pump", pump, 0)).headers.get("ETag")!)).toBe(1);
    expect((await keep()).status).toBe(201);
    const computed = await ask("POST", "api/network", exampleText("networks/01-single-pipe.json"));
    expect(computed.status).toBe(200);
    expect((await put("house-pump", pump, 0)).status).toBe(412);
    expect(await read(await ask("GET", "api/catalogue/pump"))).toMatchObject({ items: [{ id: "house-pump" }] });
    expect((await ask("DELETE", "api/catalogue/pump/house-pump", undefined, ifMatch(1))).status).toBe(200);
    expect((await keep()).status).toBe(422);
  });

  it("goes on keeping a design whose pump it has removed, and takes no such pump into another one", async () => {
    const { ask } = await servedShop();
    const { demoCatalogue, findPump } = await import("@tidewright/catalogue");
    const data = findPump(demoCatalogue, "ferrow-c40")!;
    await ask("PUT", "api/catalogue/pump/house-pump", { data }, ifMatch(0));
    const text = exampleText("waiting-room-reef.json");
    const document = JSON.parse(text.replaceAll(/"tarnhelm-[\w-]+"/g, '"house-pump"'));
    const { id } = await read<{ id: string }>(await ask("POST", "api/jobs", { name: "Reef" }));
    const design = await read<{ id: string }>(await ask("POST", `api/jobs/${id}/designs`, { name: "House", document }));
    const other = await read<{ id: string }>(
      await ask("POST", `api/jobs/${id}/designs`, { name: "Other", document: JSON.parse(text) }),
    );
    await ask("DELETE", "api/catalogue/pump/house-pump", undefined, ifMatch(1));
    const append = (designId: string, name: string) =>
      ask(
        "POST",
        `api/designs/${designId}/revisions`,
        { document: { ...document, name }, editId: randomUUID() },
        ifMatch(1),
      );
    expect((await append(design.id, "Renamed")).status).toBe(201);
    const apart = await ask("POST", `api/designs/${design.id}/variants`, { name: "Apart", revision: 1, document });
    expect(apart.status).toBe(201);
    const { status, problems } = await problem(await append(other.id, "Taken over"));
    expect(status).toBe(422);
    expect(problems?.[0]).toMatchObject({ value: "house-pump", message: 'there is no pump "house-pump"' });
  });
});
