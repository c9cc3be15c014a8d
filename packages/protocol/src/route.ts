import type { z } from "zod";

/** Who may ask: `open` anybody; `look` any account; `work` staff and owners; `own` owners; `share` and `intake` the
 *  bearer of a customer's link of that kind. On the machine itself everybody is an owner, until there are accounts and the
 *  server listens elsewhere. */
export type Access = "open" | "look" | "work" | "own" | "share" | "intake";

/** What a body is: JSON of a schema, bytes of any kind, or a stream of server-sent events. */
export type Content = z.ZodType | "bytes" | "events" | "none";

/** One thing that can be asked of the server. `{name}` in the path is a parameter, percent-encoded; `ifMatch` wants the
 *  entity tag that was read, `etag` says that the answer bears one. */
export interface Route {
  readonly id: string;
  readonly method: "GET" | "POST" | "PUT" | "PATCH" | "DELETE";
  readonly path: string;
  readonly access: Access;
  readonly summary: string;
  readonly query?: z.ZodType;
  readonly body?: Content;
  readonly answer: Content;
  /** Status of success; 200 where nothing is said. */
  readonly status?: 200 | 201 | 202;
  readonly etag?: true;
  readonly ifMatch?: true;
}

/** The names in braces of a path. */
export type ParamsOf<Path extends string> = Path extends `${string}{${infer Name}}${infer Rest}`
  ? { readonly [key in Name | keyof ParamsOf<Rest>]: string }
  : unknown;

/** Returns a route as given, with the types of its path and schemas kept.
 *  route   -> the same
 *  Source: own construction. */
export function route<const Given extends Route>(given: Given): Given {
  return given;
}
