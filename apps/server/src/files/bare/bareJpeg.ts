import { orientationAlone, orientationOf } from "./orientation.ts";

/** Parts that a viewer needs to show the right colours: JFIF's density, colour profile, Adobe's transform. Source: ITU-T
 *  T.871 (JFIF), 10; ICC.1:2010, annex B.4; Adobe Technical Note 5116, section 18. */
const needed: Readonly<Record<number, string>> = { 224: "JFIF\0", 226: "ICC_PROFILE\0", 238: "Adobe" };
const exif = "Exif\0\0";

/** Returns a JPEG without what was written beside the picture: EXIF with place and time, XMP, IPTC, remarks, previews, parts
 *  of makers, and films or further pictures behind its end. The coded picture stays as it is, byte by byte; so do the
 *  colour profile and how the camera was held.
 *  bytes of the whole file   -> bytes, or undefined where its segments cannot be followed to the coded picture
 *  Throws: never.
 *  Valid: any process of T.81; a file that breaks off inside the coded picture loses nothing more.
 *  Source: ITU-T T.81, annex B: B.1.1.2 (markers, fill bytes), B.1.1.4 (lengths), B.1.1.5 (stuffed zeros in coded data), B.2.4
 *  (application data, comments); EXIF 2.3, 4.5.4 and 4.7.2 (APP1); CIPA DC-007 (further pictures behind the end). */
export function bareJpeg(bytes: Uint8Array): Uint8Array | undefined {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (data.length < 4 || data.readUInt16BE(0) !== 0xffd8) return undefined;
  const pieces: Buffer[] = [data.subarray(0, 2)];
  let told = false;
  for (let at = 2; ; ) {
    // Stray bytes between segments are passed over, as decoders do.
    at = nextMarker(data, at);
    const marker = data[at + 1];
    if (marker === undefined) return undefined;
    if (marker === 0xd9) {
      pieces.push(data.subarray(at, at + 2));
      return Buffer.concat(pieces);
    }
    // TEM and the restart markers stand alone.
    if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) {
      pieces.push(data.subarray(at, at + 2));
      at += 2;
      continue;
    }
    if (at + 4 > data.length) return undefined;
    const end = at + 2 + data.readUInt16BE(at + 2);
    if (end < at + 4 || end > data.length) return undefined;
    const body = data.subarray(at + 4, end);
    if (marker === 0xe1 && startsWith(body, exif) && !told) {
      const orientation = orientationOf(body.subarray(exif.length));
      told = orientation !== 1;
      if (told) pieces.push(orientationSegment(orientation));
    } else if (stays(marker, body)) pieces.push(data.subarray(at, end));
    at = end;
    if (marker !== 0xda) continue;
    const after = endOfScan(data, end);
    pieces.push(data.subarray(end, after));
    if (after === data.length) return Buffer.concat(pieces);
    at = after;
  }
}

function stays(marker: number, body: Buffer): boolean {
  const isApplication = marker >= 0xe0 && marker <= 0xef;
  if (!isApplication) return marker !== 0xfe;
  const name = needed[marker];
  return name !== undefined && startsWith(body, name);
}

/** Where the next marker begins, or the length of the file. 0xFF is filling before another 0xFF, and data before a zero. */
function nextMarker(data: Buffer, from: number): number {
  for (let at = data.indexOf(0xff, from); at >= 0 && at + 1 < data.length; at = data.indexOf(0xff, at + 1)) {
    if (data[at + 1] !== 0 && data[at + 1] !== 0xff) return at;
  }
  return data.length;
}

/** Where coded data ends: at a marker that is no restart, or with the file. */
function endOfScan(data: Buffer, from: number): number {
  let at = nextMarker(data, from);
  while (at < data.length && data[at + 1]! >= 0xd0 && data[at + 1]! <= 0xd7) at = nextMarker(data, at + 2);
  return at;
}

function orientationSegment(orientation: number): Buffer {
  const body = Buffer.concat([Buffer.from(exif, "latin1"), orientationAlone(orientation)]);
  const head = Buffer.from([0xff, 0xe1, 0, body.length + 2]);
  return Buffer.concat([head, body]);
}

const startsWith = (data: Buffer, name: string): boolean => data.toString("latin1", 0, name.length) === name;
