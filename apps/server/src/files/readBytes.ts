/** Bytes of a body, or that there are more than may be. */
export type BodyReading = { readonly ok: true; readonly bytes: Uint8Array } | { readonly ok: false };

/** Returns the bytes of a body, reading no further than a limit whatever the length header says.
 *  body stream of a request; declared its Content-Length or undefined; most bytes   -> BodyReading
 *  Throws: what the stream throws when the sender goes away.
 *  Source: own construction; RFC 9110, 8.6: a length header is what a sender says, no more. */
export async function readBytes(
  body: ReadableStream<Uint8Array> | null,
  declared: string | undefined,
  most: number,
): Promise<BodyReading> {
  if (Number(declared ?? 0) > most) {
    await body?.cancel().catch(() => undefined);
    return { ok: false };
  }
  const parts: Uint8Array[] = [];
  let size = 0;
  const reader = body?.getReader();
  for (let next = await reader?.read(); next && !next.done; next = await reader?.read()) {
    size += next.value.byteLength;
    if (size > most) {
      await reader?.cancel().catch(() => undefined);
      return { ok: false };
    }
    parts.push(next.value);
  }
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.byteLength;
  }
  return { ok: true, bytes };
}
