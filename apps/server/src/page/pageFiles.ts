import { createHash } from "node:crypto";
import { readFile, stat } from "node:fs/promises";
import { extname, join, resolve, sep } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";

/** A built file as it is sent: its type, a tag of its content, and its bytes plain and compressed. */
export interface PageFile {
  readonly type: string;
  readonly tag: string;
  readonly bytes: Buffer;
  /** Smaller forms, made when somebody first asks for them. */
  readonly compressed: (encoding: Encoding) => Promise<Buffer>;
}

/** Compressions that browsers of today understand, the better one first. */
export const encodings = ["br", "gzip"] as const;
/** One of `encodings`. */
export type Encoding = (typeof encodings)[number];

const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".woff": "font/woff",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
  ".txt": "text/plain; charset=utf-8",
};
const packed = new Set([".png", ".ico", ".woff", ".woff2"]);

/** Returns whether compressing a file of this type makes it smaller. */
export const isCompressible = (path: string): boolean => !packed.has(extname(path));

/** Returns what finds built files by the path of a request; each is read and compressed once, until it changes on the disk.
 *  folder of the built screens   -> path -> PageFile, or undefined for what is not there or lies outside */
export function pageFiles(folder: string): (path: string) => Promise<PageFile | undefined> {
  const root = resolve(folder);
  const known = new Map<string, { readonly changed: number; readonly file: PageFile }>();
  return async (path) => {
    const inside = pathInside(root, path);
    if (inside === undefined) return undefined;
    try {
      const found = await stat(inside);
      if (!found.isFile()) return undefined;
      const before = known.get(inside);
      if (before?.changed === found.mtimeMs) return before.file;
      const file = pageFile(inside, await readFile(inside));
      known.set(inside, { changed: found.mtimeMs, file });
      return file;
    } catch {
      return undefined;
    }
  };
}

/** Returns a file as it is sent.
 *  path whose ending tells the type; bytes of the file   -> PageFile */
export function pageFile(path: string, bytes: Buffer): PageFile {
  const made = new Map<Encoding, Promise<Buffer>>();
  return {
    type: types[extname(path)] ?? "application/octet-stream",
    tag: `"${createHash("sha256").update(bytes).digest("base64url").slice(0, 22)}"`,
    bytes,
    compressed: (encoding) => {
      const before = made.get(encoding) ?? compress(path, bytes, encoding);
      made.set(encoding, before);
      return before;
    },
  };
}

const brotli = promisify(brotliCompress);
const zip = promisify(gzip);

async function compress(path: string, bytes: Buffer, encoding: Encoding): Promise<Buffer> {
  if (encoding === "gzip") return zip(bytes, { level: 9 });
  // A build may have left a form that took longer to make; one that is older than its file is not that file's.
  const ready = `${path}.br`;
  const [own, other] = await Promise.all([stat(path).catch(() => undefined), stat(ready).catch(() => undefined)]);
  if (own && other && other.mtimeMs >= own.mtimeMs) return readFile(ready);
  return brotli(bytes, {
    params: { [constants.BROTLI_PARAM_QUALITY]: 9, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.byteLength },
  });
}

/** Paths that climb out, hide behind a dot or hold a zero are nobody's. */
function pathInside(root: string, path: string): string | undefined {
  let plain: string;
  try {
    plain = decodeURIComponent(path);
  } catch {
    return undefined;
  }
  if (plain.includes("\0") || /(^|[/\\])\./.test(plain)) return undefined;
  const found = resolve(join(root, plain.endsWith("/") ? `${plain}index.html` : plain));
  return found.startsWith(root + sep) ? found : undefined;
}
