import { Validator } from "@seriousme/openapi-schema-validator";
import { routes } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { endServed, servedShop } from "../testing/servedShop.ts";

interface Described {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, { readonly "x-access": string; readonly responses: object }>>;
}

afterEach(endServed);

/** What a JSON Pointer of RFC 6901 names in a document. */
function at(document: unknown, pointer: string): unknown {
  const keys = pointer.slice(2).split("/");
  return keys.reduce<unknown>(
    (place, key) => (place as Record<string, unknown> | undefined)?.[key.replaceAll("~1", "/").replaceAll("~0", "~")],
    document,
  );
}

describe("the description of the interface", () => {
  it("names every route that is mounted and none that is not", async () => {
    const { app, ask } = await servedShop();
    const document = (await (await ask("GET", "api/openapi.json")).json()) as Described;
    expect(document.openapi).toMatch(/^3\.1\./);
    const described = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
    const mounted = app.hono.routes
      .filter(({ method, path }) => method !== "ALL" && !path.includes("*"))
      .map(({ method, path }) => `${method} ${path.replace(/:(\w+)/g, "{$1}")}`);
    expect([...new Set(mounted)].sort()).toEqual(described.sort());
    expect([...app.mounted].sort()).toEqual(Object.keys(routes).sort());
  });

  it("says of every route who may ask", async () => {
    const { ask } = await servedShop();
    const { paths } = (await (await ask("GET", "api/openapi.json")).json()) as Described;
    for (const methods of Object.values(paths)) {
      for (const operation of Object.values(methods)) {
        expect(["open", "look", "work", "own", "share", "intake"]).toContain(operation["x-access"]);
        expect(Object.keys(operation.responses).length).toBeGreaterThan(0);
      }
    }
    expect(paths["/api/jobs/{jobId}"]?.["delete"]?.["x-access"]).toBe("work");
  });

  it("is OpenAPI 3.1 by the specification's own schema", async () => {
    const { ask } = await servedShop();
    const document = (await (await ask("GET", "api/openapi.json")).json()) as Record<string, unknown>;
    // Source: schema of OpenAPI 3.1 as published by the OpenAPI Initiative, brought by the validator.
    const result = await new Validator().validate(document);
    expect(result).toMatchObject({ valid: true });
    const { info: _, ...nameless } = document;
    expect(await new Validator().validate(nameless)).toMatchObject({ valid: false });
  });

  it("leads every reference somewhere", async () => {
    const { ask } = await servedShop();
    const document: unknown = await (await ask("GET", "api/openapi.json")).json();
    const dead: string[] = [];
    let found = 0;
    const walk = (value: unknown, root: unknown): void => {
      if (typeof value !== "object" || value === null) return;
      // A schema with an $id is the root of the references inside it (JSON Schema 2020-12, 8.2.1).
      const inner = "$id" in value ? value : root;
      for (const [key, each] of Object.entries(value)) {
        if (key === "$ref" && typeof each === "string") {
          found++;
          if (at(inner, each) === undefined) dead.push(each);
        } else walk(each, inner);
      }
    };
    walk(document, document);
    expect(found).toBeGreaterThan(50);
    expect(dead).toEqual([]);
  });
});
