import { existsSync } from "node:fs";
import type { Server } from "node:http";
import { fileURLToPath } from "node:url";
import { buildApp } from "../server/app.ts";
import { listen } from "../server/listen.ts";

// Both src/commands and dist/commands lie three folders below apps.
const webRoot = fileURLToPath(new URL("../../../web/dist", import.meta.url));

/** Serves the bench and the answers on this machine until it is asked to stop. */
export async function serveCommand({ port }: { readonly port: number }): Promise<void> {
  if (!existsSync(webRoot))
    process.stderr.write("The bench is not built yet, only /api answers; build it with: npm run build\n");
  const { server, port: bound } = await listen(buildApp(webRoot), port);
  if (port !== 0 && bound !== port) process.stderr.write(`Port ${port} is taken; ${bound} is free.\n`);
  process.stdout.write(`Tidewright is at http://127.0.0.1:${bound}/\n`);
  await untilStopped(server);
}

/** Ends when a signal asks for it: no new connections, requests in progress are finished, idle connections closed. */
function untilStopped(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const stop = () => {
      server.close(() => resolve());
      server.closeIdleConnections();
      // A request that does not end must not keep the server alive for ever.
      setTimeout(() => server.closeAllConnections(), 3000).unref();
    };
    process.once("SIGINT", stop);
    process.once("SIGTERM", stop);
  });
}
