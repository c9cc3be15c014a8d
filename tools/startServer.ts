import { type ChildProcess, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const server = (path: string) => fileURLToPath(new URL(`../apps/server/${path}`, import.meta.url));
const fromSources = ["--conditions=source", "--import", "tsx", server("src/main.ts")];
/** How long a server may take to say where it is [ms]. */
const patience = 60_000;

/** How the real server is started: `port` 0 for any; `database` a PostgreSQL in place of the folder; `built` as it was
 *  last built, which starts in half the time, else from its sources. */
export interface ServerStart {
  readonly data: string;
  readonly port?: number;
  readonly database?: string | undefined;
  readonly built?: boolean;
  readonly options?: readonly string[];
  /** Hears of the process as soon as there is one, before it answers anybody. */
  readonly born?: (child: ChildProcess) => void;
}

/** The real server in a process of its own. */
export interface StartedServer {
  /** With a slash at its end. */
  readonly address: string;
  readonly child: ChildProcess;
  /** Ends it without warning, as a power cut would. */
  kill(): Promise<void>;
}

/** Starts the real server.
 *  start what it is started with   -> StartedServer, once it has said where it is
 *  Throws: where it ends or says nothing, with everything that it has said. */
export function startServer(start: ServerStart): Promise<StartedServer> {
  const { data, port = 0, database, built = false, options = [], born } = start;
  const program = built ? [server("dist/main.js")] : fromSources;
  const { DATABASE_URL: _url, TIDEWRIGHT_DATA: _data, ...rest } = process.env;
  const child = spawn(process.execPath, [...program, "--data", data, "--port", String(port), ...options], {
    stdio: ["ignore", "pipe", "pipe"],
    // The test runner's own settings are not the server's.
    env: { ...rest, NODE_OPTIONS: "", ...(database === undefined ? {} : { DATABASE_URL: database }) },
  });
  born?.(child);
  const kill = async (): Promise<void> => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    const ended = new Promise((done) => child.once("exit", done));
    child.kill("SIGKILL");
    await ended;
  };
  return new Promise((ready, failed) => {
    let told = "";
    const timer = setTimeout(() => {
      child.kill("SIGKILL");
      failed(new Error(`the server did not say where it is: ${told}`));
    }, patience);
    const hear = (chunk: Buffer): void => {
      // Only the end is of use where something fails after hours.
      told = (told + chunk.toString()).slice(-10_000);
      const address = /is at (http:\/\/\S+\/)\n/.exec(told)?.[1];
      if (address === undefined) return;
      clearTimeout(timer);
      ready({ address, child, kill });
    };
    child.stdout.on("data", hear);
    child.stderr.on("data", hear);
    child.once("exit", (code, signal) => {
      clearTimeout(timer);
      failed(new Error(`the server ended with ${code ?? signal}: ${told}`));
    });
  });
}
