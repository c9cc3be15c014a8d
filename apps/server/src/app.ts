import type { Store } from "@tidewright/store";
import type { Hono } from "hono";
import type { ThreadPool } from "./compute/threadPool.ts";
import type { Doors } from "./doors/doors.ts";
import type { RememberedAnswers } from "./http/rememberedAnswers.ts";

/** A server that routes are mounted on: what it keeps, its doors, and the secret by which its own commands know it. */
export interface App {
  readonly hono: Hono;
  readonly store: Store;
  readonly doors: Doors;
  /** Threads that compute while this one answers. */
  readonly threads: ThreadPool;
  /** Secret of `running.json`: whoever reads the data folder may ask for a backup. */
  readonly localSecret: string;
  /** Names of the routes that were mounted, as the interface's description must name them. */
  readonly mounted: Set<string>;
  /** Answers that hold until something changes; undefined where changes of others are told late. */
  readonly remembered: RememberedAnswers | undefined;
}
