import { type Routes, routes } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { freshApp } from "../testing/freshApp.ts";
import { removeFresh } from "../testing/freshDoors.ts";
import { png } from "../testing/sampleFiles.ts";
import { sampleRequest } from "../testing/sampleRequests.ts";

afterEach(removeFresh);

/** Text that runs where somebody takes it for markup, an attribute, a script, an address, a header or a template. */
const payloads = [
  "<script>alert(1)</script>",
  '"><img src=x onerror=alert(1)>',
  "'-alert(1)-'",
  "javascript:alert(1)//",
  "</script><svg onload=alert(1)>",
  "{{constructor.constructor('alert(1)')()}}",
  "\u202e<b>gnp.exe\u2028alert(1)",
  "a\r\nSet-Cookie: tidewright=evil\r\n\r\n<html>",
];

/** Every place of a text inside a body. */
function textPlaces(value: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof value === "string") return [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => textPlaces(each, [...path, key]));
}

const replaced = (value: unknown, [key, ...rest]: readonly string[], by: string): unknown => {
  if (key === undefined) return by;
  if (Array.isArray(value)) return value.map((each, at) => (String(at) === key ? replaced(each, rest, by) : each));
  return { ...(value as object), [key]: replaced((value as Record<string, unknown>)[key], rest, by) };
};

/** An answer that a browser takes for data, whatever is in it. */
function expectData(response: Response): void {
  expect(response.headers.get("Content-Type")).toMatch(/^application\/(problem\+)?json$/);
  expect(response.headers.get("X-Content-Type-Options")).toBe("nosniff");
  expect(response.headers.get("Content-Security-Policy")).toMatch(/script-src 'self'(;|$)/);
  expect(response.headers.get("Content-Security-Policy")).not.toMatch(/unsafe/);
  expect(response.headers.get("Set-Cookie") ?? "").not.toContain("evil");
}

/** Fields of free text, which must be kept and given back as they were sent. */
const kept: Partial<Record<keyof Routes, readonly string[]>> = {
  createCustomer: ["name", "contact", "notes"],
  changeCustomer: ["name", "contact", "notes"],
  createJob: ["name", "notes"],
  changeJob: ["name", "notes"],
  createDesign: ["name"],
  createVariant: ["name"],
  nameRevision: ["name"],
  createAccount: ["name"],
  changeSettings: ["name", "address"],
  putCatalogueRow: ["data.label"],
};

describe("markup in a text", () => {
  const bodied = (Object.keys(routes) as (keyof Routes)[]).filter((id) => {
    const route = routes[id] as { readonly body?: unknown };
    return route.body !== undefined && typeof route.body !== "string";
  });

  for (const id of bodied) {
    it(`of ${id} comes back as the same text in JSON, or is refused in JSON`, async () => {
      const { body } = { body: (await sampleRequest(await freshApp(), id)).json };
      // Documents have their own reading; their first texts stand for all.
      const places = textPlaces(body).slice(0, 12);
      expect(places.length).toBeGreaterThan(0);
      const taken = new Set<string>();
      for (const place of places) {
        const fresh = await freshApp();
        for (const payload of payloads) {
          const request = await sampleRequest(fresh, id);
          const as = routes[id].access === "intake" ? "intake" : "owner";
          const response = await fresh.ask(request.path, {
            ...request,
            as,
            json: replaced(request.json, place, payload),
          });
          expectData(response);
          const text = await response.text();
          if (response.status < 300 && kept[id]?.includes(place.join("."))) {
            expect(text).toContain(JSON.stringify(payload).slice(1, -1));
            taken.add(place.join("."));
          }
        }
      }
      expect([...taken].sort()).toEqual([...(kept[id] ?? [])].sort());
    });
  }

  it("of an address that is not there, of a query and of a header is answered in JSON", async () => {
    const fresh = await freshApp();
    for (const payload of payloads) {
      const sign = encodeURIComponent(payload);
      for (const path of [
        `/${sign}`,
        `/api/${sign}`,
        `/api/jobs/${sign}`,
        `/api/jobs?text=${sign}`,
        `/api/jobs?${sign}=1`,
      ]) {
        const response = await fresh.ask(path, { as: "owner", headers: { "User-Agent": "<script>" } });
        expectData(response);
        await response.text();
      }
    }
  });

  it("of an intake arrives in the desk as text, and of a job at a customer as text", async () => {
    for (const payload of payloads) {
      const fresh = await freshApp();
      const json = {
        name: payload,
        contact: payload,
        notes: payload,
        answers: { name: payload, tank: { volume: { value: 300, unit: "L" } } },
      };
      const sent = await fresh.ask("/api/intake", { method: "POST", as: "intake", json });
      expectData(sent);
      expect(sent.status).toBe(201);
      for (const path of ["/api/customers", "/api/jobs", "/api/audit"]) {
        const response = await fresh.ask(path, { as: "owner" });
        expectData(response);
        if (path !== "/api/audit") expect(await response.text()).toContain(JSON.stringify(payload).slice(1, -1));
      }
      const head = (await fresh.store.jobs.search()).items.find(
        (each) => each.stage === "intake" && each.name === payload,
      );
      const shown = await fresh.store.designs.ofJob(head!.id);
      expect(shown).toHaveLength(1);
      const design = await fresh.ask(`/api/designs/${shown[0]!.id}`, { as: "owner" });
      expectData(design);
    }
  });
});

describe("markup in a file's name", () => {
  it("is text in every list and harmless in every header", async () => {
    const fresh = await freshApp();
    for (const payload of payloads) {
      const name = encodeURIComponent(`${payload}.svg`);
      const path = `/api/jobs/${fresh.sharedJob.id}/files?kind=photo&name=${name}`;
      const sent = await fresh.ask(path, { method: "POST", as: "staff", bytes: png() });
      expect(sent.status).toBe(201);
      expectData(sent);
      const { id, name: kept } = (await sent.json()) as { id: string; name: string };
      expect(kept).not.toMatch(/[\p{Cc}/\\\u202e\u2028]/u);
      const file = await fresh.ask(`/api/files/${id}`, { as: "readOnly" });
      expect(file.status).toBe(200);
      expect(file.headers.get("Content-Type")).toBe("image/png");
      const disposition = file.headers.get("Content-Disposition")!;
      expect(disposition).toMatch(
        /^inline; filename="[^"\\]*\.png"; filename\*=UTF-8''[A-Za-z0-9!#$&+.^_`|~%-]+\.png$/,
      );
      expect(file.headers.get("Set-Cookie")).toBeNull();
    }
    const list = await fresh.ask(`/api/jobs/${fresh.sharedJob.id}/files`, { as: "readOnly" });
    expectData(list);
    expect(await list.text()).toContain("onerror=alert(1)");
  });
});
