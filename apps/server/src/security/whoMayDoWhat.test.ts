import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Access, type Routes, routes } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
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

/** Asks one route as somebody, on a server with everything there that it needs. */
async function asked(routeId: keyof Routes, who: Who): Promise<Response> {
  const away = who !== "thisMachine";
  const fresh = await freshApp(away ? {} : { listensOn: "127.0.0.1" });
  const request = await sampleRequest(fresh, routeId);
  const as: As = who === "thisMachine" ? "nobody" : who;
  return fresh.ask(request.path, {
    ...request,
    as,
    ...(away ? {} : { from: "127.0.0.1", host: "127.0.0.1:4870" }),
  });
}

describe("every route of the protocol", () => {
  it("is mounted", async () => {
    const { app } = await freshApp();
    expect([...app.mounted].sort()).toEqual(Object.keys(routes).sort());
  });

  const found: Partial<Record<keyof Routes, Record<string, string>>> = {};
  for (const id of Object.keys(routes) as (keyof Routes)[]) {
    it(`${id}: lets in whom the rule lets in, and nobody else`, async () => {
      const row: Record<string, string> = {};
      for (const who of askers) {
        const response = await asked(id, who);
        const { status } = response;
        await response.body?.cancel();
        row[who] = status < 300 || status === besides[id]?.(who) ? "yes" : String(status);
      }
      found[id] = row;
      expect(row).toEqual(rule[routes[id].access]);
    });
  }

  it("answers as the table in the repository says", () => {
    const lines = (Object.keys(routes) as (keyof Routes)[]).map((id) => {
      const { method, path, summary } = routes[id];
      const cells = askers.map((who) => (found[id]?.[who] === "yes" ? "yes" : `no (${found[id]?.[who]})`));
      return `| ${method} \`${path}\` | ${summary.replaceAll("|", "\\|")} | ${cells.join(" | ")} |`;
    });
    const table = `# Who may do what

Every route of the server as it really answers, asked with a right request by each who may come. Written by
\`apps/server/src/security/whoMayDoWhat.test.ts\`, which also holds it against the rule; do not edit by hand.

"no (401)": an account would help; "no (403)": this account or link may not; "no (404)": a link that opens nothing, or not
this, is not told from one that never was. "This machine": whoever sits at it, where the server listens on its own address
and no proxy stands before it.

| Route | What it does | ${askers.map((who) => titles[who]).join(" | ")} |
|---|---|${askers.map(() => "---|").join("")}
${lines.join("\n")}
`;
    if (process.env["UPDATE_TABLES"] === "1" || !existsSync(tableFile)) writeFileSync(tableFile, table);
    expect(readFileSync(tableFile, "utf8")).toBe(table);
  });
});
