import { createServer, type Server } from "node:http";
import { getRequestListener } from "@hono/node-server";
import type { Hono } from "hono";
import { BadInput } from "./badInput.ts";

const triedPorts = 100;

/** Serves an app at an address and port, or the next free port above it.
 *  hono; host address or name of this machine; port, 0 for any that is free   -> the server and the port it has
 *  Throws: `BadInput` where no port is free or may be used, or the address is not this machine's. */
export async function listen(hono: Hono, host: string, port: number): Promise<{ server: Server; port: number }> {
  const last = port === 0 ? 0 : Math.min(port + triedPorts - 1, 65_535);
  for (let tried = port; tried <= last; tried++) {
    const server = createServer(getRequestListener(hono.fetch));
    const bound = await bind(server, host, tried);
    if (bound !== undefined) return { server, port: bound };
  }
  throw new BadInput(`--port: ports ${port} to ${last} are all taken; give another, or 0 for any free one`);
}

function bind(server: Server, host: string, port: number): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EADDRINUSE") resolve(undefined);
      else if (error.code === "EACCES")
        reject(new BadInput(`--port ${port}: this port may not be used; give one above 1023`));
      else if (["EADDRNOTAVAIL", "ENOTFOUND", "EAI_AGAIN"].includes(error.code ?? ""))
        reject(new BadInput(`--host ${host}: this is no address of this machine; 0.0.0.0 means all of them`));
      else reject(error);
    });
    server.listen(port, host, () => {
      const address = server.address();
      resolve(typeof address === "object" && address !== null ? address.port : port);
    });
  });
}
