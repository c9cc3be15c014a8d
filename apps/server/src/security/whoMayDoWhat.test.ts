import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Access, type Routes, routes } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { openApiDocument } from "../openApi/openApiDocument.ts";
import { type As, freshApp } from "../testing/freshApp.ts";
import { removeFresh } from "../testing/freshDoors.ts";
import { sampleRequest } from "../testing/sampleRequests.ts";

afterEach(removeFresh);

/** The table is written anew by: UPDATE_TABLES=1 npx vitest run apps/server/src/security */
const tableFile = fileURLToPath(new URL("../../../../docs/security/who-may-do-what.md", import.meta.url));

const askers = ["nobody", "share", "intake", "readOnly", "staff", "owner", "thisMachine"] as const;
type Who = (typeof askers)[number];
const titles: Readonly<Record<Who, string>> = {
  nobody: "nobody",
  share: "share link",
  intake: "intake link",
  readOnly: "read-only",
  staff: "staff",
  owner: "owner",
  thisMachine: "this machine",
};

/** What the rule says, written down apart from the code that holds to it: the status of a refusal, or "yes". */
const rule: Readonly<Record<Access, Readonly<Record<Who, string>>>> = {
  open: all("yes"),
  look: { ...all("yes"), nobody: "401", share: "403", intake: "403" },
  work: { ...all("yes"), nobody: "401", share: "403", intake: "403", readOnly: "403" },
  own: { ...all("yes"), nobody: "401", share: "403", intake: "403", readOnly: "403", staff: "403" },
  share: { ...all("404"), share: "yes" },
  intake: { ...all("404"), intake: "yes" },
};

function all(answer: string): Record<Who, string> {
  return Object.fromEntries(askers.map((who) => [who, answer])) as Record<Who, string>;
}

/** Answers of open doors that look behind who asks: a secret for the first owner is of no use once there is an account,
 *  and where nobody signs in there is no password. */
const besides: Partial<Record<keyof Routes, (who: Who) => number | undefined>> = {
  firstOwner: (who) => (who === "thisMachine" ? 403 : 422),
  changePassword: (who) => (who === "thisMachine" ? 403 : undefined),
};

/** One operation of the interface's description. */
interface Operation {
  readonly id: string;
  readonly method: string;
  readonly path: string;
  readonly access: Access;
  readonly summary: string;
}
type Described = Readonly<Record<string, { operationId: string; summary: string; "x-access"?: Access }>>;
const operations: readonly Operation[] = Object.entries(
  openApiDocument()["paths"] as Record<string, Described>,
).flatMap(([path, methods]) =>
  Object.entries(methods).map(([method, described]) => ({
    id: described.operationId,
    method: method.toUpperCase(),
    path,
    access: described["x-access"] ?? "open",
    summary: described.summary,
  })),
);

/** Asks one operation as everybody, on servers with everything there that it needs: one on a shop's network, one on its
 *  own machine. */
async function askedByAll({ id, method, path }: Operation): Promise<Record<string, number>> {
  const onNetwork = await freshApp();
  const onMachine = await freshApp({ listensOn: "127.0.0.1" });
  const statuses: Record<string, number> = {};
  for (const who of askers) {
    const here = who === "thisMachine";
    const fresh = here ? onMachine : onNetwork;
    const request = Object.hasOwn(routes, id)
      ? await sampleRequest(fresh, id as keyof Routes)
      : { path, method, ...(method === "GET" ? {} : { json: {} }) };
    const as: As = here ? "nobody" : who;
    const place = here ? { from: "127.0.0.1", host: "127.0.0.1:4870" } : {};
    const response = await fresh.ask(request.path, { ...request, as, ...place });
    await response.body?.cancel();
    statuses[who] = response.status;
  }
  return statuses;
}

describe("every operation of the interface's description", () => {
  it("is one of the protocol's, an answer of hydraulics or the description itself, and is mounted", async () => {
    const { app } = await freshApp();
    expect([...app.mounted].sort()).toEqual(Object.keys(routes).sort());
    const ids = operations.map((each) => each.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(expect.arrayContaining(Object.keys(routes)));
    // What answers /api and is not described would be walked by nobody.
    const described = new Set(operations.map(({ method, path }) => `${method} ${path.replace(/\{(\w+)\}/g, ":$1")}`));
    const answering = app.hono.routes
      .filter(({ path, method }) => path.startsWith("/api") && method !== "ALL")
      .map(({ path, method }) => `${method} ${path}`);
    expect([...new Set(answering)].filter((each) => !described.has(each))).toEqual([]);
  });

  const found: Record<string, Record<string, string>> = {};
  for (const operation of operations) {
    const { id, access } = operation;
    it(`${id}: lets in whom the rule lets in, and nobody else`, async () => {
      const row: Record<string, string> = {};
      for (const [who, status] of Object.entries(await askedByAll(operation))) {
        row[who] = status < 300 || status === besides[id as keyof Routes]?.(who as Who) ? "yes" : String(status);
      }
      found[id] = row;
      expect(row).toEqual(rule[access]);
    });
  }

  it("answers as the table in the repository says", () => {
    const lines = operations.map(({ id, method, path, summary }) => {
      const cells = askers.map((who) => (found[id]?.[who] === "yes" ? "yes" : `no (${found[id]?.[who]})`));
      return `| ${method} \`${path}\` | ${summary.replaceAll("|", "\\|")} | ${cells.join(" | ")} |`;
    });
    const table = `# Who may do what

Every route of the server as it really answers, asked with a right request by each who may come. Written by
\`apps/server/src/security/whoMayDoWhat.test.ts\`, which also holds it against the rule; do not edit by hand.

"no (401)": an account would help; "no (403)": this account or link may not; "no (404)": a link that opens nothing, or not
this, is not told from one that never was. "This machine": whoever sits at it, where the server listens on its own address
and no proxy stands before it. A "yes" at an open door says that anybody may knock: signing in wants the password, the first
owner the secret that the server printed, and that once.

| Route | What it does | ${askers.map((who) => titles[who]).join(" | ")} |
|---|---|${askers.map(() => "---|").join("")}
${lines.join("\n")}
`;
    if (process.env["UPDATE_TABLES"] === "1" || !existsSync(tableFile)) writeFileSync(tableFile, table);
    expect(readFileSync(tableFile, "utf8")).toBe(table);
  });
});
