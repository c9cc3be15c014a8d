/** Tag of the orientation and the type of its value. Source: EXIF 2.3 (JEITA CP-3451C), 4.6.4 A, tag 274; TIFF 6.0, section 2. */
const orientationTag = 0x0112;
const short = 3;

/** Returns how a camera was held when it took a picture, from what it wrote beside it.
 *  tiff the body of an EXIF part, which has the form of a TIFF file   -> 1 to 8; 1, upright, where nothing else is said
 *  Throws: never; what cannot be read says nothing.
 *  Source: TIFF 6.0, section 2 (header, directory of 12-byte entries); EXIF 2.3, 4.6.4 A for the values. */
export function orientationOf(tiff: Uint8Array): number {
  const data = Buffer.from(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  if (data.length < 8) return 1;
  const order = data.toString("latin1", 0, 2);
  if (order !== "II" && order !== "MM") return 1;
  const read16 = (at: number): number => (order === "II" ? data.readUInt16LE(at) : data.readUInt16BE(at));
  const read32 = (at: number): number => (order === "II" ? data.readUInt32LE(at) : data.readUInt32BE(at));
  const directory = read32(4);
  if (read16(2) !== 42 || directory + 2 > data.length) return 1;
  for (let entry = 0; entry < read16(directory); entry++) {
    const at = directory + 2 + 12 * entry;
    if (at + 12 > data.length) return 1;
    if (read16(at) !== orientationTag) continue;
    const value = read16(at + 8);
    return read16(at + 2) === short && read32(at + 4) === 1 && value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

/** Returns the body of an EXIF part that says how the camera was held, and nothing else.
 *  orientation 1 to 8   -> 26 bytes, a TIFF file with one entry
 *  Source: TIFF 6.0, section 2; EXIF 2.3, 4.5.2. */
export function orientationAlone(orientation: number): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write("MM\0*", 0, "latin1");
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(1, 8);
  tiff.writeUInt16BE(orientationTag, 10);
  tiff.writeUInt16BE(short, 12);
  tiff.writeUInt32BE(1, 14);
  tiff.writeUInt16BE(orientation, 18);
  return tiff;
}
