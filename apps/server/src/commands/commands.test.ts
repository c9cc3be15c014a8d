import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Database from "libsql";
import { afterEach, beforeEach, describe, expect, it } from "vitest";

const main = fileURLToPath(new URL("../main.ts", import.meta.url));
let folder: string;
let data: string;
const running: ChildProcess[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tidewright-commands-"));
  data = join(folder, "data");
});
afterEach(() => {
  for (const child of running.splice(0)) child.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
});

interface Said {
  readonly child: ChildProcess;
  readonly out: () => string;
  readonly errors: () => string;
  readonly ended: Promise<number | null>;
}

/** Runs the real program from its sources; no database of the environment is taken. */
const run = (...args: readonly string[]): Said => runWith({}, ...args);

function runWith(more: Readonly<Record<string, string>>, ...args: readonly string[]): Said {
  const { DATABASE_URL: _, TIDEWRIGHT_DATA: __, ...rest } = process.env;
  const env = { ...rest, ...more };
  const child = spawn(process.execPath, ["--conditions=source", "--import", "tsx", main, ...args], { env });
  running.push(child);
  let out = "";
  let errors = "";
  child.stdout.on("data", (part: Buffer) => {
    out += part.toString();
  });
  child.stderr.on("data", (part: Buffer) => {
    errors += part.toString();
  });
  const ended = new Promise<number | null>((done) => child.once("close", (code) => done(code)));
  return { child, out: () => out, errors: () => errors, ended };
}

async function start(...more: readonly string[]): Promise<Said & { readonly address: string }> {
  const said = run("start", "--data", data, "--port", "0", ...more);
  await expect.poll(said.out, { timeout: 30_000 }).toContain("\n");
  return { ...said, address: /http:\S+/.exec(said.out())![0] };
}

const addJob = (address: string, name: string) =>
  fetch(new URL("api/jobs", address), {
    method: "POST",
    headers: { "X-Tidewright": "1", "Content-Type": "application/json" },
    body: JSON.stringify({ name }),
  });

describe("tidewright-server", () => {
  it("says where it is in one line, keeps its secret to its owner, and ends well when it is asked to", async () => {
    const server = await start();
    expect(server.out()).toMatch(/^Tidewright is at http:\/\/127\.0\.0\.1:\d+\/\n$/);
    expect((await addJob(server.address, "Reef")).status).toBe(201);
    expect(statSync(join(data, "running.json")).mode & 0o077).toBe(0);
    const events = await fetch(new URL("api/events", server.address));
    server.child.kill("SIGTERM");
    expect(await server.ended).toBe(0);
    await events.body?.cancel().catch(() => undefined);
    expect(existsSync(join(data, "running.json"))).toBe(false);
  });

  it("refuses a second server on one data folder with a clear sentence", async () => {
    await start();
    const second = run("--data", data, "--port", "0");
    expect(await second.ended).toBe(2);
    expect(second.out()).toBe("");
    expect(second.errors()).toMatch(/^The data folder .+ is in use by process \d+ .+ stop that one/);
  });

  it("backs a running server up into one file, which restores into an empty folder and no other", async () => {
    const server = await start();
    await addJob(server.address, "Reef by the window");
    const file = join(folder, "all.backup");
    const backup = run("backup", file, "--data", data);
    expect([await backup.ended, backup.errors()]).toEqual([0, ""]);
    expect(statSync(file).mode & 0o077).toBe(0);
    const again = run("backup", file, "--data", data);
    expect(await again.ended).toBe(2);
    expect(again.errors()).toContain("is there already");
    server.child.kill("SIGTERM");
    await server.ended;

    const occupied = run("restore", file, "--data", data);
    expect(await occupied.ended).toBe(2);
    expect(occupied.errors()).toContain("not empty");
    data = join(folder, "restored");
    expect(await run("restore", file, "--data", data).ended).toBe(0);
    const restored = await start();
    const jobs: unknown = await (await fetch(new URL("api/jobs", restored.address))).json();
    expect(jobs).toMatchObject({ items: [{ name: "Reef by the window" }] });
  });

  it("opens the store itself for a backup where a killed server left its address behind", async () => {
    const server = await start();
    await addJob(server.address, "Reef");
    server.child.kill("SIGKILL");
    await server.ended;
    expect(existsSync(join(data, "running.json"))).toBe(true);
    const backup = run("backup", join(folder, "all.backup"), "--data", data);
    expect([await backup.ended, backup.errors()]).toEqual([0, ""]);
  });

  it("says what to do about a folder of a newer program, a damaged one and a backup of nothing", async () => {
    const first = await start();
    first.child.kill("SIGTERM");
    await first.ended;
    const database = new Database(join(data, "tidewright.db"));
    database.exec("UPDATE tidewright_store SET version = 9999");
    database.close();
    const newer = run("--data", data, "--port", "0");
    expect(await newer.ended).toBe(2);
    expect(newer.errors()).toMatch(/newer/);
    const broken = join(folder, "broken");
    mkdirSync(broken);
    writeFileSync(join(broken, "tidewright.db"), readFileSync(main).toString().repeat(20));
    const damaged = run("--data", broken, "--port", "0");
    expect(await damaged.ended).toBe(2);
    expect(damaged.errors()).toMatch(/restore|backup/i);
    const nothing = run("backup", join(folder, "b"), "--data", join(folder, "nowhere"));
    expect(await nothing.ended).toBe(2);
    expect(nothing.errors()).toContain("--data");
    expect(existsSync(join(folder, "nowhere"))).toBe(false);
  });

  it("lists what there is, and answers a bad option with what is wanted", async () => {
    const bad = run("--port", "many");
    expect(await bad.ended).toBe(2);
    expect(bad.errors()).toContain("whole number");
    const help = run("--help");
    expect(await help.ended).toBe(0);
    for (const word of ["start", "backup", "restore", "DATABASE_URL"]) expect(help.out()).toContain(word);
  });

  it("takes another database's address for no folder", async () => {
    const elsewhere = runWith({ DATABASE_URL: "mysql://shop@localhost/shop" }, "--data", data, "--port", "0");
    expect(await elsewhere.ended).toBe(2);
    expect(elsewhere.errors()).toContain("DATABASE_URL names no PostgreSQL");
  });

  it("ends with a clear sentence where it is to listen at an address of another machine", async () => {
    // Addresses for examples in documents, which no machine has (RFC 5737, RFC 3849). The threads that draw first
    // pictures run by then, where the screens are built; none may keep the program alive.
    const web = join(folder, "web");
    mkdirSync(join(web, ".server"), { recursive: true });
    for (const name of ["index.html", "renderFirstPicture.js"]) writeFileSync(join(web, ".server", name), "");
    for (const host of ["203.0.113.7", "2001:db8::7"]) {
      const foreign = run("--data", data, "--port", "0", "--web", web, "--host", host);
      expect(await foreign.ended).toBe(2);
      expect(foreign.errors()).toContain(`--host ${host}: this is no address of this machine`);
    }
  });

  it("wants accounts on any other address, and prints the first owner's secret beside its address", async () => {
    const server = await start("--host", "0.0.0.0");
    const refused = await fetch(new URL("api/jobs", server.address));
    expect(refused.status).toBe(401);
    expect(server.errors()).toMatch(/secret.*: \S{20,}/);
    // The server's own command needs no account on its own machine.
    expect(await run("backup", join(folder, "all.backup"), "--data", data).ended).toBe(0);
  });
});
