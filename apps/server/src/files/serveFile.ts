import type { StoredFile } from "@tidewright/store";
import { contentDisposition, downloadName } from "./fileName.ts";

/** Returns the answer that hands a kept file out: pictures to look at, everything else to keep. Whatever a file holds, it
 *  is no page here: it may run nothing, load nothing and be shown on no foreign page.
 *  file with its bytes; ifNoneMatch header or undefined   -> 200 with the bytes, or 304
 *  Source: OWASP Cheat Sheet Series, File Upload; W3C CSP 3 (sandbox); Fetch standard (nosniff, CORP); RFC 9110, 13.1.2. */
export function serveFile(file: StoredFile, ifNoneMatch?: string): Response {
  const headers = new Headers({
    "Content-Type": file.contentType,
    "Content-Disposition": contentDisposition(
      file.contentType.startsWith("image/") && file.contentType !== "image/svg+xml" ? "inline" : "attachment",
      downloadName(file.name, file.contentType),
    ),
    "Content-Security-Policy": "sandbox; default-src 'none'",
    "X-Content-Type-Options": "nosniff",
    "Cross-Origin-Resource-Policy": "same-origin",
    // Kept by the browser of whoever may see it, and asked for again: an account may have been closed since.
    "Cache-Control": "private, no-cache",
    ETag: `"${file.sha256}"`,
  });
  if (ifNoneMatch === `"${file.sha256}"`) return new Response(null, { status: 304, headers });
  headers.set("Content-Length", String(file.bytes.byteLength));
  return new Response(new Uint8Array(file.bytes), { status: 200, headers });
}
