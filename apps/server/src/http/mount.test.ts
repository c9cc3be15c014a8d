import { route, routes } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { z } from "zod";
import { endServed, servedShop } from "../testing/servedShop.ts";
import { mount } from "./mount.ts";

afterEach(endServed);

const extra = route({
  id: "extra",
  method: "GET",
  path: "/api/extra/{name}",
  access: "look",
  summary: "a route of this test",
  answer: z.object({ version: z.int() }),
  etag: true,
});

describe("a mounted route", () => {
  it("cuts its answer to the schema, so that nothing leaves that the protocol does not name", async () => {
    const { app, ask } = await servedShop({ web: "/nowhere" });
    mount(app, extra, ({ params }) => ({ version: params.name.length, passwordHash: "never" }));
    const response = await ask("GET", "api/extra/four");
    // SHA-256 of {"version":4} in base64url begins so: sha256sum, xxd -r -p, basenc --base64url.
    expect([response.headers.get("ETag"), await response.text()]).toEqual(['"4.mf1nyJ2jfnyl"', '{"version":4}']);
  });

  it("calls an answer that is not of its schema our own fault, and tells the asker nothing of it", async () => {
    const { app, ask } = await servedShop({ web: "/nowhere" });
    mount(app, extra, () => ({ version: "secret" as unknown as number }));
    const response = await ask("GET", "api/extra/x");
    expect(response.status).toBe(500);
    expect(await response.json()).toMatchObject({ type: "urn:tidewright:problem:our-fault" });
    expect(await (await ask("GET", "api/extra/x")).text()).not.toContain("secret");
  });

  it("is mounted once", async () => {
    const { app } = await servedShop();
    expect(() => mount(app, routes.jobs, () => ({ items: [], total: 0 }))).toThrow("mounted twice");
  });
});
