import { spawnSync } from "node:child_process";
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { type AddressInfo, createServer } from "node:net";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";

/** A PostgreSQL server of its own, on a loopback port. */
export interface ScratchPostgres {
  /** Names its database, for DATABASE_URL. */
  readonly url: string;
  /** Ends the server and takes its folder away. */
  stop(): void;
}

/** Folder with the server's programs: on PATH, else where Debian keeps them, newest first; undefined when nowhere. */
export function postgresPrograms(): string | undefined {
  const debian = "/usr/lib/postgresql";
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : [];
  const folders = [...(process.env.PATH ?? "").split(delimiter), ...versions.map((each) => join(debian, each, "bin"))];
  return folders.find((folder) => existsSync(join(folder, "initdb")) && existsSync(join(folder, "pg_ctl")));
}

/** Starts a server over an empty folder that is thrown away with it; undefined where there is none to start. */
export async function scratchPostgres(): Promise<ScratchPostgres | undefined> {
  const programs = postgresPrograms();
  if (programs === undefined) return undefined;
  const folder = mkdtempSync(join(tmpdir(), "tidewright-pg-"));
  // The server refuses to run as root, which is what containers and CI are.
  const user = process.getuid?.() === 0 ? ordinaryUser() : undefined;
  if (user !== undefined) chownSync(folder, user.uid, user.gid);
  const data = join(folder, "data");
  const run = (program: string, ...args: readonly string[]): void => {
    const { status, stderr } = spawnSync(join(programs, program), args, {
      ...user,
      cwd: folder,
      encoding: "utf8",
      // What is left running must not hold this process's own streams.
      stdio: ["ignore", "ignore", program === "initdb" ? "pipe" : "ignore"],
    });
    if (status !== 0) throw new Error(`${program} ended with ${status}: ${stderr ?? `see ${join(folder, "log")}`}`);
  };
  const port = await freePort();
  run("initdb", "-D", data, "-U", "postgres", "-A", "trust", "-E", "UTF8", "--no-sync");
  run("pg_ctl", "-D", data, "-w", "-l", join(folder, "log"), "-o", `-h 127.0.0.1 -p ${port} -k ${folder}`, "start");
  return {
    url: `postgres://postgres@127.0.0.1:${port}/postgres`,
    stop() {
      run("pg_ctl", "-D", data, "-w", "-m", "immediate", "stop");
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A port that nobody listens on just now. */
async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  const { port } = server.address() as AddressInfo;
  await new Promise((closed) => server.close(closed));
  return port;
}

/** The account that the package made for the server, else one that owns nothing. */
function ordinaryUser(): { uid: number; gid: number } {
  const idOf = (name: string, flag: string): number =>
    Number(spawnSync("id", [flag, name], { encoding: "utf8" }).stdout);
  const name = idOf("postgres", "-u") > 0 ? "postgres" : "nobody";
  return { uid: idOf(name, "-u"), gid: idOf(name, "-g") };
}
