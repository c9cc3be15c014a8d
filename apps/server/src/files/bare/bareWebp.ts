import { orientationAlone, orientationOf } from "./orientation.ts";

/** Chunks that are the picture, and the flags of the extended form that tell of those that are not. Source: WebP Container
 *  Specification, "Extended File Format". */
const needed = new Set(["VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF", "ICCP"]);
const exifFlag = 0x08;
const xmpFlag = 0x04;

/** Returns a WebP without what was written beside the picture: EXIF with place and time, XMP, and chunks that are not of the
 *  format. Picture, animation and colour profile stay as they are, byte by byte; so does how the camera was held.
 *  bytes of the whole file   -> bytes, or undefined where its chunks cannot be followed to the end
 *  Throws: never.
 *  Source: WebP Container Specification, "RIFF File Format", "Extended File Format", "Metadata". */
export function bareWebp(bytes: Uint8Array): Uint8Array | undefined {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (data.length < 12) return undefined;
  const last = data.readUInt32LE(4) + 8;
  if (last > data.length) return undefined;
  const pieces: Buffer[] = [Buffer.from(data.subarray(0, 12))];
  let extended: Buffer | undefined;
  let held: Buffer | undefined;
  for (let at = 12; at < last; ) {
    if (at + 8 > last) return undefined;
    const size = data.readUInt32LE(at + 4);
    // Chunks begin at even places; some writers leave the last one's filling out.
    const end = Math.min(at + 8 + size + (size & 1), last);
    if (at + 8 + size > last) return undefined;
    const name = data.toString("latin1", at, at + 4);
    if (needed.has(name)) {
      // A copy, since its flags change.
      const piece = Buffer.from(data.subarray(at, end));
      if (name === "VP8X" && size >= 10) extended ??= piece;
      pieces.push(piece);
    } else if (name === "EXIF") held ??= orientationChunk(data.subarray(at + 8, at + 8 + size));
    at = end;
  }
  if (extended !== undefined) {
    extended[8]! &= ~(exifFlag | xmpFlag);
    if (held !== undefined) {
      extended[8]! |= exifFlag;
      pieces.push(held);
    }
  }
  const bare = Buffer.concat(pieces);
  bare.writeUInt32LE(bare.length - 8, 4);
  return bare;
}

function orientationChunk(body: Buffer): Buffer | undefined {
  // Some writers put JPEG's name before the body, which the specification does not have.
  const named = body.toString("latin1", 0, 6) === "Exif\0\0";
  const orientation = orientationOf(named ? body.subarray(6) : body);
  if (orientation === 1) return undefined;
  const tiff = orientationAlone(orientation);
  const head = Buffer.from("EXIF\0\0\0\0", "latin1");
  head.writeUInt32LE(tiff.length, 4);
  return Buffer.concat([head, tiff]);
}
