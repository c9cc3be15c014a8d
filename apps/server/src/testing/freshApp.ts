import { randomUUID } from "node:crypto";
import { firstDesign, readStart } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import type { Account, AccountRole, Job, Link } from "@tidewright/protocol";
import type { Store } from "@tidewright/store";
import { type BuiltApp, buildApp } from "../buildApp.ts";
import { compute } from "../compute/compute.ts";
import type { ThreadPool } from "../compute/threadPool.ts";
import type { Doors } from "../doors/doors.ts";
import { type Clock, freshDoors } from "./freshDoors.ts";

/** Who asks in a test: with an account's session, a customer's link, or from this machine. */
export type As = AccountRole | "nobody" | "share" | "intake";

/** A request of a test, with what a screen of ours would send unless it says otherwise. */
export interface Sent {
  readonly method?: string;
  readonly as?: As;
  readonly json?: unknown;
  readonly bytes?: Uint8Array;
  readonly version?: number;
  readonly headers?: Readonly<Record<string, string | undefined>>;
  readonly from?: string;
  readonly host?: string;
}

/** A server on a shop's network with one account of each role, a job of one customer with a design, and links to it. */
export interface FreshApp {
  readonly app: BuiltApp;
  readonly doors: Doors;
  readonly store: Store;
  readonly clock: Clock;
  readonly accounts: Readonly<Record<AccountRole, Account>>;
  readonly secrets: Readonly<Record<As, string>>;
  readonly sharedJob: Job;
  readonly links: Readonly<Record<"share" | "intake", Link>>;
  ask(path: string, sent?: Sent): Promise<Response>;
}

/** A design that can be kept. */
export const sampleDocument = (() => {
  const started = readStart({ tank: { volume: { value: 300, unit: "L" } } });
  if (!started.ok) throw new Error("the sample answers cannot be read");
  return firstDesign(started.answers, demoCatalogue).design;
})();

/** Password of every account of a test. */
export const samplePassword = "seven brass valves";
export const host = "192.168.1.20:4870";
let hash: Promise<string> | undefined;

/** Doors are tried here, not hydraulics: every computation is done at once, but for the design of an intake, which is kept. */
const noThreads: ThreadPool = {
  run: async (request) => (request.computation === "firstDesign" ? compute(request) : { ok: true, json: "{}" }),
  close: async () => {},
};

/** Builds a server with somebody of each kind. */
export async function freshApp(
  options: {
    readonly listensOn?: string;
    readonly behindTls?: boolean;
    readonly people?: boolean;
    readonly web?: string;
  } = {},
): Promise<FreshApp> {
  const { listensOn = "192.168.1.20", behindTls = false, people = true } = options;
  const { doors, store, clock } = await freshDoors({ listensOn, behindTls });
  const app = buildApp({
    store,
    host: listensOn,
    behindTls,
    web: options.web ?? "/nowhere",
    now: doors.now,
    doors,
    threads: noThreads,
  });
  const by = { author: "set-up", at: new Date(clock.now).toISOString() };
  const taken = async <T>(work: Promise<{ ok: true; value: T } | { ok: false }>): Promise<T> => {
    const outcome = await work;
    if (!outcome.ok) throw new Error(`the set-up was refused: ${JSON.stringify(outcome)}`);
    return outcome.value;
  };
  hash ??= doors.passwords.hash(samplePassword);
  const passwordHash = await hash;
  const accounts = {} as Record<AccountRole, Account>;
  const secrets = { nobody: "" } as Record<As, string>;
  const expiresAt = new Date(clock.now + 12 * 3_600_000).toISOString();
  for (const role of people ? (["owner", "staff", "readOnly"] as const) : []) {
    accounts[role] = await taken(store.accounts.create({ name: `One ${role}`, role, passwordHash }, by));
    secrets[role] = (await taken(store.sessions.open(accounts[role].id, expiresAt, by))).token;
  }
  const customer = await taken(
    store.customers.create({ id: randomUUID(), name: "Aldous Penn", contact: "aldous@penn.example" }, by),
  );
  const sharedJob = await taken(store.jobs.create({ name: "Reef by the window", customerId: customer.id }, by));
  const design = await taken(
    store.designs.create({ jobId: sharedJob.id, name: "First", document: sampleDocument }, by),
  );
  const share = await taken(store.links.create({ kind: "view", designId: design.id, expiresAt }, by));
  const intake = await taken(store.links.create({ kind: "intake", expiresAt }, by));
  secrets.share = share.token;
  secrets.intake = intake.token;
  const ask = async (path: string, sent: Sent = {}): Promise<Response> => {
    const as = sent.as ?? "nobody";
    const name = `${behindTls ? "__Host-" : ""}tidewright`;
    const bodied = sent.json !== undefined || sent.bytes !== undefined;
    const given: Record<string, string | undefined> = {
      Host: sent.host ?? host,
      "X-Tidewright": "1",
      ...(as === "share" || as === "intake" ? { Authorization: `Link ${secrets[as]}` } : {}),
      ...(as !== "share" && as !== "intake" && secrets[as] !== "" ? { Cookie: `${name}=${secrets[as]}` } : {}),
      ...(bodied ? { "Content-Type": sent.bytes ? "application/octet-stream" : "application/json" } : {}),
      ...(sent.version === undefined ? {} : { "If-Match": `"${sent.version}"` }),
      ...sent.headers,
    };
    const headers = new Headers(
      Object.entries(given).filter((each): each is [string, string] => each[1] !== undefined),
    );
    const body = sent.bytes ?? (sent.json === undefined ? undefined : JSON.stringify(sent.json));
    const method = sent.method ?? "GET";
    const env = { incoming: { socket: { remoteAddress: sent.from ?? "192.168.1.77" } } };
    return app.hono.request(
      `http://${given["Host"]}${path}`,
      { method, headers, ...(body === undefined ? {} : { body: body as BodyInit }) },
      env,
    );
  };
  return {
    app,
    doors,
    store,
    clock,
    accounts,
    secrets,
    sharedJob,
    links: { share: share.link, intake: intake.link },
    ask,
  };
}
