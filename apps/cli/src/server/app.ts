import { existsSync } from "node:fs";
import { serveStatic } from "@hono/node-server/serve-static";
import { Hono } from "hono";
import { secureHeaders } from "hono/secure-headers";
import { api, failure } from "./api.ts";
import { onlyLoopback } from "./onlyLoopback.ts";
import { problemResponse } from "./problemDetails.ts";

const self = ["'self'"];
const none = ["'none'"];

/** Returns the whole server: the bench as built files, the answers under /api, and a sign of life.
 *  webRoot folder of the built bench; paths out of it are not served */
export function buildApp(webRoot: string): Hono {
  const app = new Hono();
  app.use(onlyLoopback());
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: self,
        baseUri: none,
        objectSrc: none,
        frameAncestors: none,
        formAction: self,
        scriptSrc: self,
        styleSrc: self,
        workerSrc: self,
        connectSrc: self,
        imgSrc: ["'self'", "data:"],
      },
      // Plain HTTP on this machine: a promise of HTTPS would lock the browser out of every other local server.
      strictTransportSecurity: false,
      referrerPolicy: "no-referrer",
      xFrameOptions: "DENY",
    }),
  );
  app.get("/healthz", (context) => context.json({ status: "ok" }));
  app.route("/api", api());
  if (existsSync(webRoot)) app.get("*", serveStatic({ root: webRoot }));
  app.notFound((context) =>
    problemResponse(context, {
      type: "urn:tidewright:problem:not-found",
      title: "There is nothing here",
      status: 404,
      detail: `nothing answers ${context.req.method} ${context.req.path}; /api/openapi.json lists what does`,
    }),
  );
  app.onError((error, context) => failure(context, error));
  return app;
}
