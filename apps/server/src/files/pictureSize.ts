/** Most points of a picture that is kept: a screen that shows one needs four bytes for each. */
export const mostPoints = 100_000_000;

/** Width and height of a picture in points. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Returns how large a picture says it is, before anybody unpacks it.
 *  bytes of the whole file; contentType as found from its content   -> points across and down; undefined where it is no
 *  picture or does not say
 *  Throws: never.
 *  Source: PNG Specification, third edition, 11.2.1 (IHDR); ITU-T T.81, B.2.2 (frame header); WebP Container Specification
 *  (VP8X, VP8L) and RFC 6386, 9.1 (VP8); ISO/IEC 23008-12, 6.5.3 (ispe), of which the largest counts. */
export function pictureSize(bytes: Uint8Array, contentType: string): PictureSize | undefined {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    if (contentType === "image/png") return { width: data.readUInt32BE(16), height: data.readUInt32BE(20) };
    if (contentType === "image/jpeg") return ofJpeg(data);
    if (contentType === "image/webp") return ofWebp(data);
    return /^image\/(?:avif|hei[cf])$/.test(contentType) ? ofHeif(data) : undefined;
  } catch (error) {
    // A number that would stand behind the end of the file.
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function ofJpeg(data: Buffer): PictureSize | undefined {
  for (let at = 2; at + 9 <= data.length; ) {
    const marker = data[at + 1]!;
    if (data[at] !== 0xff || marker === 0xff || marker === 0) at++;
    else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) at += 2;
    else if (marker === 0xd9 || marker === 0xda) return undefined;
    // Frame headers are C0 to CF but for tables (C4, CC) and what is set aside (C8).
    else if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) {
      return { width: data.readUInt16BE(at + 7), height: data.readUInt16BE(at + 5) };
    } else at += 2 + Math.max(2, data.readUInt16BE(at + 2));
  }
  return undefined;
}

function ofWebp(data: Buffer): PictureSize | undefined {
  const kind = data.toString("latin1", 12, 16);
  if (kind === "VP8X") return { width: data.readUIntLE(24, 3) + 1, height: data.readUIntLE(27, 3) + 1 };
  if (kind === "VP8 ") return { width: data.readUInt16LE(26) & 0x3fff, height: data.readUInt16LE(28) & 0x3fff };
  if (kind !== "VP8L") return undefined;
  const bits = data.readUInt32LE(21);
  return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
}

function ofHeif(data: Buffer): PictureSize | undefined {
  let largest: PictureSize | undefined;
  for (let at = data.indexOf("ispe"); at >= 0 && at + 16 <= data.length; at = data.indexOf("ispe", at + 4)) {
    const size = { width: data.readUInt32BE(at + 8), height: data.readUInt32BE(at + 12) };
    if (largest === undefined || size.width * size.height > largest.width * largest.height) largest = size;
  }
  return largest;
}
