import { createServer, type Server } from "node:http";
import { getRequestListener } from "@hono/node-server";
import type { Hono } from "hono";
import { badSource } from "../input/badInput.ts";

const triedPorts = 100;

/** Serves an app on 127.0.0.1 at the port, or the next free one above it; 0 takes any that is free. */
export async function listen(app: Hono, port: number): Promise<{ server: Server; port: number }> {
  const last = port === 0 ? 0 : Math.min(port + triedPorts - 1, 65_535);
  for (let tried = port; tried <= last; tried++) {
    const server = createServer(getRequestListener(app.fetch));
    const bound = await bind(server, tried);
    if (bound !== undefined) return { server, port: bound };
  }
  throw badSource("--port", `ports ${port} to ${last} are all taken`, "give another port, or 0 for any free one", port);
}

function bind(server: Server, port: number): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EADDRINUSE") resolve(undefined);
      else if (error.code === "EACCES")
        reject(badSource("--port", "this port may not be used", "give a port above 1023", port));
      else reject(error);
    });
    server.listen(port, "127.0.0.1", () => {
      const address = server.address();
      resolve(typeof address === "object" && address !== null ? address.port : port);
    });
  });
}
