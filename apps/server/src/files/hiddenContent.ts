import type { Trouble } from "./csvProblem.ts";

/** How far browsers look when they guess a type. Source: WHATWG MIME Sniffing, 5.2, the resource header. */
const sniffed = 1445;

/** Returns what a picture or paper hides besides itself, or undefined where nothing is found.
 *  bytes of the file; contentType as its signature says   -> Trouble or undefined
 *  Valid: finds markup where a browser would look for it, an archive at the end (the file would also open as one), bytes
 *  after the end of a PNG or a WebP, and scripts that a PDF names openly. It does not look into compressed parts of a
 *  PDF.
 *  Source: PNG Specification, third edition, 5.6 (IEND ends the file); WebP container specification (RIFF size); ZIP
 *  application note 4.3.16 (end of central directory); ISO 32000-1, 12.6.4.5 and 12.6.4.16 for actions of a PDF. */
export function hiddenContent(bytes: Uint8Array, contentType: string): Trouble | undefined {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const head = data.subarray(0, sniffed).toString("latin1");
  const markup = /<(?:script|html|head|body|iframe|svg|object|embed|!doctype|\?php)\b/i.exec(head);
  if (markup) {
    return {
      message: `says it is ${contentType} and has ${markup[0]}> at its beginning, so it is two things at once`,
      fix: "save the picture or paper again with another program",
    };
  }
  // An archive is found from its end; its last record may be followed by a remark of up to 65535 bytes.
  if (endOfArchive(data)) {
    return {
      message: `says it is ${contentType} and ends as an archive, so it is two things at once`,
      fix: "save the picture or paper again with another program",
    };
  }
  if (contentType === "image/png") return afterPng(data);
  if (contentType === "image/webp" && data.readUInt32LE(4) + 8 < data.length - 1) {
    return { message: "has bytes after the end of the picture", fix: "save the picture again with another program" };
  }
  if (contentType === "application/pdf") {
    const action = /\/(JavaScript|Launch|EmbeddedFile|RichMedia)\b/.exec(data.toString("latin1"));
    if (action) {
      return {
        message: `is a PDF with something in it that runs or is packed in (${action[1]})`,
        fix: "print it into a new PDF and send that",
      };
    }
  }
  return undefined;
}

function endOfArchive(data: Buffer): boolean {
  const from = Math.max(0, data.length - 65_557);
  for (let at = data.lastIndexOf("PK\x05\x06", undefined, "latin1"); at >= from && at >= 0; ) {
    if (at + 22 <= data.length && at + 22 + data.readUInt16LE(at + 20) <= data.length) return true;
    if (at === 0) break;
    at = data.lastIndexOf("PK\x05\x06", at - 1, "latin1");
  }
  return false;
}

function afterPng(data: Buffer): Trouble | undefined {
  const broken = { message: "is a PNG that breaks off", fix: "choose the picture again, or save it anew" };
  for (let at = 8; at + 12 <= data.length; ) {
    const end = at + 12 + data.readUInt32BE(at);
    if (data.toString("latin1", at + 4, at + 8) === "IEND") {
      return end === data.length
        ? undefined
        : { message: "has bytes after the end of the picture", fix: "save the picture again with another program" };
    }
    at = end;
  }
  return broken;
}
