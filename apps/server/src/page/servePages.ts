import { readerCookie, readReader } from "@tidewright/protocol";
import { languages } from "@tidewright/words";
import type { Context } from "hono";
import { getCookie } from "hono/cookie";
import type { App } from "../app.ts";
import { type FillFirstPicture, firstPictures } from "../firstPaint/fillFirstPicture.ts";
import { pictureThread } from "../firstPaint/pictureThread.ts";
import { bearingsOf } from "../http/bearingsOf.ts";
import { type Encoding, encodings, isCompressible, type PageFile, pageFile, pageFiles } from "./pageFiles.ts";

/** Serves the built screens, compressed and with tags of their content.
 *  app; folder of the built screens, which may be built anew while the server runs; paths out of it are not served
 *  -> what ends its thread */
export function servePages(app: App, folder: string): () => Promise<void> {
  const find = pageFiles(folder);
  const thread = pictureThread(folder);
  const fill = firstPictures(app, thread);
  app.hono.on(["GET", "HEAD"], "*", async (context, next) => {
    const { path } = context.req;
    if (path.startsWith("/api/")) return next();
    const found = await find(path);
    if (found === undefined) return next();
    const filled = await withFirstPicture(fill, context, path, found);
    return answer(filled ?? found, path, context.req.raw, filled !== undefined);
  });
  return () => thread.close();
}

async function withFirstPicture(
  fill: FillFirstPicture,
  context: Context,
  path: string,
  found: PageFile,
): Promise<PageFile | undefined> {
  const designId = new URL(context.req.url).searchParams.get("design");
  if (designId === null || !/^\/(index\.html)?$/.test(path)) return undefined;
  const reader = readReader(getCookie(context, readerCookie), context.req.header("Accept-Language"), languages);
  const filled = await fill(bearingsOf(context), reader, designId, found.bytes.toString("utf8"));
  return filled === undefined ? undefined : pageFile(".filled.html", Buffer.from(filled));
}

/** `own` is for one reader's eyes: nothing in between may keep it. */
async function answer(file: PageFile, path: string, request: Request, own: boolean): Promise<Response> {
  const headers = new Headers({
    "Content-Type": file.type,
    ETag: file.tag,
    // Names of built parts bear a hash of their content; everything else may change under its name.
    "Cache-Control": own
      ? "no-store"
      : /\/assets\/[^/]+-[\w-]{8,}\.\w+$/.test(path)
        ? "public, max-age=31536000, immutable"
        : "no-cache",
  });
  if (isCompressible(path)) headers.set("Vary", "Accept-Encoding");
  const known = request.headers.get("If-None-Match")?.split(",");
  if (known?.some((each) => each.trim().replace(/^W\//, "") === file.tag)) {
    headers.delete("Content-Type");
    return new Response(null, { status: 304, headers });
  }
  const encoding = isCompressible(path) ? encodingFor(request.headers.get("Accept-Encoding")) : undefined;
  const bytes = encoding === undefined ? file.bytes : await file.compressed(encoding);
  if (encoding !== undefined) headers.set("Content-Encoding", encoding);
  headers.set("Content-Length", String(bytes.byteLength));
  return new Response(request.method === "HEAD" ? null : new Uint8Array(bytes), { headers });
}

/** Returns the best compression that a browser takes; one with a weight of zero it does not.
 *  header Accept-Encoding   -> encoding, or undefined for plain bytes
 *  Source: RFC 9110, 12.5.3.
 *  Example: encodingFor("gzip, deflate, br;q=0")  ->  "gzip" */
export function encodingFor(header: string | null): Encoding | undefined {
  const taken = (header ?? "")
    .split(",")
    .map((each) =>
      each
        .trim()
        .toLowerCase()
        .split(/\s*;\s*/),
    )
    .filter(([, weight]) => weight === undefined || !/^q=0(\.0*)?$/.test(weight))
    .map(([name]) => name);
  return encodings.find((each) => taken.includes(each));
}
