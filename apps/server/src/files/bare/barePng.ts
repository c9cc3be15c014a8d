import { crc32 } from "node:zlib";
import { orientationAlone, orientationOf } from "./orientation.ts";

/** Chunks beside the critical ones that change how the picture looks, still or moving. Source: PNG Specification, third
 *  edition, 11.3 (ancillary chunks): colour 11.3.2, palettes, background and density 11.3.4, animation 11.3.6. */
const needed = new Set("tRNS cHRM gAMA iCCP sBIT sRGB cICP mDCV cLLI bKGD hIST pHYs sPLT acTL fcTL fdAT".split(" "));

/** Returns a PNG without what was written beside the picture: EXIF with place and time, texts, XMP, the time of the last
 *  change, and chunks of makers. Pixels, colours and animation stay as they are, byte by byte; so does how the camera was
 *  held.
 *  bytes of the whole file   -> bytes, or undefined where its chunks cannot be followed to the end
 *  Throws: never.
 *  Source: PNG Specification, third edition: 5.3 (chunks), 5.4 (the fifth bit of a name tells ancillary ones), 11.3.3 and
 *  11.3.5 (texts, EXIF, time). */
export function barePng(bytes: Uint8Array): Uint8Array | undefined {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const pieces: Buffer[] = [data.subarray(0, 8)];
  for (let at = 8; at + 12 <= data.length; ) {
    const end = at + 12 + data.readUInt32BE(at);
    if (end > data.length) return undefined;
    const name = data.toString("latin1", at + 4, at + 8);
    const isCritical = (data[at + 4]! & 0x20) === 0;
    if (isCritical || needed.has(name)) pieces.push(data.subarray(at, end));
    else if (name === "eXIf") {
      const orientation = orientationOf(data.subarray(at + 8, end - 4));
      if (orientation !== 1) pieces.push(chunkOf("eXIf", orientationAlone(orientation)));
    }
    if (name === "IEND") return Buffer.concat(pieces);
    at = end;
  }
  return undefined;
}

function chunkOf(name: string, body: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, "latin1"), body]);
  const around = Buffer.alloc(8);
  around.writeUInt32BE(body.length, 0);
  around.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([around.subarray(0, 4), named, around.subarray(4)]);
}
