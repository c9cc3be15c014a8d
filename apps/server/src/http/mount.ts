import { createHash } from "node:crypto";
import { entityTag, type ParamsOf, type Route } from "@tidewright/protocol";
import type { By } from "@tidewright/store";
import type { Context } from "hono";
import type { z } from "zod";
import type { App } from "../app.ts";
import type { Asker } from "../doors/asker.ts";
import { instantOf } from "../doors/doors.ts";
import { answerText } from "./answerText.ts";
import { type Bearings, bearingsOf } from "./bearingsOf.ts";
import { expectedVersion } from "./expectedVersion.ts";
import { guard } from "./guard.ts";
import { readRequest } from "./readRequest.ts";
import type { ReadyAnswer } from "./rememberedAnswers.ts";
import { versionIn } from "./versionIn.ts";

/** JSON has no "undefined": what a checked input does not say is not there. */
type Defined<T> = { [Key in keyof T]: Exclude<T[Key], undefined> };
type ReadonlyDeep<T> = T extends object ? { readonly [Key in keyof T]: ReadonlyDeep<T[Key]> } : T;
type Checked<C> = C extends z.ZodType ? Defined<z.output<C>> : undefined;

/** One request of a route, checked: who asks and what for. */
export interface Asked<R extends Route> {
  readonly params: ParamsOf<R["path"]>;
  readonly query: Checked<R["query"]>;
  readonly body: Checked<R["body"]>;
  /** The version that If-Match names, where the route wants one. */
  readonly expected: R extends { readonly ifMatch: true } ? number : undefined;
  readonly asker: Asker;
  readonly by: By;
  readonly bearings: Bearings;
  readonly request: Request;
  /** Headers of the answer, besides those that every answer has. */
  readonly headers: Headers;
}

/** What a route answers with: a value of its schema, or a whole response where it answers bytes or events. */
export type Answer<R extends Route> = R["answer"] extends z.ZodType ? ReadonlyDeep<z.input<R["answer"]>> : Response;

/** Lets a server answer a route of the protocol. Access, path, query, body and tag are checked before the handler runs,
 *  its answer before it is sent; what it throws is told as problem details.
 *  app the server; route of the table; handler; remembered whether its answer depends on path, query and what is kept
 *  alone, so that it may be given again until something changes   -> nothing
 *  Throws: where the route is mounted already: our fault. */
export function mount<const R extends Route>(
  app: App,
  route: R,
  handler: (asked: Asked<R>) => Promise<Answer<R>> | Answer<R>,
  { remembered = false }: { readonly remembered?: boolean } = {},
): void {
  if (app.mounted.has(route.id)) throw new Error(`the route ${route.id} is mounted twice`);
  app.mounted.add(route.id);
  const path = route.path.replace(/\{(\w+)\}/g, ":$1");
  app.hono.on(route.method, path, async (context) => {
    const bearings = bearingsOf(context);
    const asker = await guard(app, route.access, bearings, context.req.raw);
    const expected = route.ifMatch ? expectedVersion(context.req.header("If-Match")) : undefined;
    const { params, query, body } = await readRequest(route, context);
    const headers = new Headers();
    const asked = {
      params,
      query,
      body,
      expected,
      asker,
      by: { author: asker.name, at: instantOf(app.doors) },
      bearings,
      request: context.req.raw,
      headers,
    } as unknown as Asked<R>;
    if (remembered && app.remembered) {
      const key = JSON.stringify([route.id, params, query]);
      return send(
        context,
        route,
        await app.remembered.get(key, async () => ready(route, await handler(asked))),
        headers,
      );
    }
    const answer: unknown = await handler(asked);
    return answer instanceof Response ? answer : send(context, route, ready(route, answer), headers);
  });
}

function ready(route: Route, answer: unknown): ReadyAnswer {
  const text = answerText(route, answer);
  return { text, tag: route.etag ? entityTag(versionIn(answer), lookOf(text)) : undefined };
}

/** The tag of an answer changes with everything that it shows: a job bears its customer's name, a revision a name that was
 *  given later, and neither makes a new version of it. 72 bits of a hash tell them apart. */
const lookOf = (text: string): string => createHash("sha256").update(text).digest("base64url").slice(0, 12);

function send(context: Context, route: Route, { text, tag }: ReadyAnswer, headers: Headers): Response {
  headers.set("Content-Type", "application/json");
  if (tag !== undefined) {
    headers.set("ETag", tag);
    const known = context.req.header("If-None-Match")?.split(",");
    // A tag speaks of the thing itself; RFC 9110, 13.1.2 compares it weakly here.
    if (route.method === "GET" && known?.some((each) => each.trim().replace(/^W\//, "") === tag)) {
      headers.delete("Content-Type");
      return new Response(null, { status: 304, headers });
    }
  }
  return new Response(text, { status: route.status ?? 200, headers });
}
