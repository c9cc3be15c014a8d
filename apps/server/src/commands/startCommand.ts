import { existsSync } from "node:fs";
import type { Server } from "node:http";
import { openStore } from "@tidewright/store";
import { buildApp } from "../buildApp.ts";
import { firstOwnerLine, takeUpWaits } from "../doors/doors.ts";
import { isLoopback } from "../doors/isLoopback.ts";
import { keepHouseDaily } from "../housekeeping.ts";
import { listen } from "./listen.ts";
import { removeRunning, writeRunning } from "./runningFile.ts";

/** How a server is started. */
export interface StartOptions {
  readonly data: string;
  readonly database: string | undefined;
  readonly port: number;
  readonly host: string;
  readonly name: readonly string[];
  readonly web: string;
  readonly behindTls: boolean;
}

/** Serves a shop until it is asked to stop. */
export async function startCommand(options: StartOptions): Promise<void> {
  const { data, database, host, port, web, behindTls, name } = options;
  const store = await openStore(database ?? data);
  try {
    if (!existsSync(web))
      tell(`There are no built screens in ${web}, only /api answers; build them with: npm run build`);
    const spare = existsSync(data) ? { spare: data } : {};
    const app = buildApp({ store, host, names: name, behindTls, web, remembers: database === undefined, ...spare });
    try {
      await takeUpWaits(app.doors);
      const { server, port: bound } = await listen(app.hono, host, port);
      if (port !== 0 && bound !== port) tell(`Port ${port} is taken; ${bound} is free.`);
      const ownerLine = await firstOwnerLine(app.doors);
      if (ownerLine !== undefined) tell(ownerLine);
      const everywhere = host === "0.0.0.0" || host === "::";
      const reached = `http://${everywhere ? "127.0.0.1" : host.includes(":") ? `[${host}]` : host}:${bound}/`;
      if (existsSync(data)) writeRunning(data, { address: reached, secret: app.localSecret });
      process.stdout.write(
        `Tidewright is at ${isLoopback(host) && !host.includes(":") ? `http://127.0.0.1:${bound}/` : reached}\n`,
      );
      const stopHousekeeping = keepHouseDaily(store);
      await untilStopped(server, app.closeStreams);
      stopHousekeeping();
      removeRunning(data);
    } finally {
      // Also where it may not listen: threads that wait for work would keep the program alive.
      await app.closeThreads();
    }
  } finally {
    await store.close();
  }
}

const tell = (sentence: string): void => {
  process.stderr.write(`${sentence}\n`);
};

/** Ends when a signal asks for it: no new connections, requests in progress are finished, streams and idle connections
 *  closed. */
function untilStopped(server: Server, closeStreams: () => void): Promise<void> {
  return new Promise((resolve) => {
    const stop = () => {
      server.close(() => resolve());
      closeStreams();
      server.closeIdleConnections();
      // A request that does not end must not keep the server alive for ever.
      setTimeout(() => server.closeAllConnections(), 3000).unref();
    };
    process.once("SIGINT", stop);
    process.once("SIGTERM", stop);
  });
}
