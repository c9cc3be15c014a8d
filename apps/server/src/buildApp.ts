import { randomBytes } from "node:crypto";
import type { Store } from "@tidewright/store";
import { Hono } from "hono";
import type { App } from "./app.ts";
import { mountComputing } from "./compute/mountComputing.ts";
import { type ThreadPool, threadPool } from "./compute/threadPool.ts";
import { type Doors, doorsOf } from "./doors/doors.ts";
import { isLoopback } from "./doors/isLoopback.ts";
import { mountLinks } from "./doors/mountLinks.ts";
import { mountPeople } from "./doors/mountPeople.ts";
import { mountFiles } from "./files/mountFiles.ts";
import { rememberedAnswers } from "./http/rememberedAnswers.ts";
import { problemResponse, tellFailure } from "./http/tellFailure.ts";
import { openApiDocument } from "./openApi/openApiDocument.ts";
import { knownNames } from "./page/knownNames.ts";
import { securityHeaders } from "./page/securityHeaders.ts";
import { servePages } from "./page/servePages.ts";
import { mountBackup } from "./routes/backup.ts";
import { mountCustomers } from "./routes/customers.ts";
import { mountDesigns } from "./routes/designs.ts";
import { mountEvents, type StreamLimits } from "./routes/events.ts";
import { mountJobs } from "./routes/jobs.ts";
import { mountShop } from "./routes/shop.ts";

/** What a server is built from. */
export interface AppOptions {
  readonly store: Store;
  /** Address that it listens on. */
  readonly host: string;
  /** Further names by which it is reached. */
  readonly names?: readonly string[];
  readonly behindTls?: boolean;
  /** Folder of the built screens. */
  readonly web: string;
  /** Folder with room for a second copy of what is kept, for backups; the system's own where none is given. */
  readonly spare?: string;
  /** Milliseconds since 1970. */
  readonly now?: () => number;
  readonly streams?: StreamLimits;
  readonly doors?: Doors;
  readonly threads?: ThreadPool;
  /** Whether answers are remembered until something changes: only where nobody else changes what is kept. */
  readonly remembers?: boolean;
}

/** A built server, and what ends the streams that would keep it from stopping. */
export interface BuiltApp extends App {
  readonly closeStreams: () => void;
  readonly closeThreads: () => Promise<void>;
}

/** Returns the whole server: screens as built files, everything of the protocol under /api, and a sign of life.
 *  options what it is built from   -> BuiltApp, which listens nowhere yet */
export function buildApp(options: AppOptions): BuiltApp {
  const { store, host, names = [], behindTls = false, web, spare, now } = options;
  const hono = new Hono();
  // A name that is not this machine's own is reached from elsewhere, by a proxy here that everybody's requests come from.
  const listensOn = names.find((each) => !isLoopback(each)) ?? host;
  const doors = options.doors ?? doorsOf({ store, listensOn, behindTls, ...(now ? { now } : {}) });
  const app: App = {
    hono,
    store,
    doors,
    threads: options.threads ?? threadPool(),
    localSecret: randomBytes(32).toString("base64url"),
    mounted: new Set(),
    remembered: options.remembers ? rememberedAnswers(store) : undefined,
  };
  hono.use(securityHeaders(behindTls));
  hono.use(knownNames(host, names));
  hono.onError((error, context) => tellFailure(context, error));
  hono.notFound((context) =>
    problemResponse({
      type: "urn:tidewright:problem:not-found",
      title: "There is nothing here",
      status: 404,
      detail: `nothing answers ${context.req.method} ${context.req.path}; /api/openapi.json lists what does`,
    }),
  );
  hono.get("/healthz", (context) => context.json({ status: "ok" }));
  let description: Record<string, unknown> | undefined;
  hono.get("/api/openapi.json", (context) => {
    description ??= openApiDocument();
    return context.json(description);
  });
  hono.get("/robots.txt", (context) => context.text("User-agent: *\nDisallow: /\n"));
  mountPeople(app);
  mountLinks(app);
  mountFiles(app);
  mountCustomers(app);
  mountJobs(app);
  mountDesigns(app);
  mountShop(app);
  mountBackup(app, spare);
  const closeStreams = mountEvents(app, options.streams);
  mountComputing(app);
  const closePages = servePages(app, web);
  const closeThreads = async () => {
    await Promise.all([app.threads.close(), closePages()]);
  };
  return { ...app, closeStreams, closeThreads };
}
