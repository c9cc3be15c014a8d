import { type IsoBox, isoBoxes } from "./isoBoxes.ts";

/** An item that tells about a picture. */
export interface MetadataItem {
  readonly id: number;
  readonly kind: "exif" | "xmp";
}

/** A stretch of the file [bytes]. */
export interface Extent {
  readonly from: number;
  readonly to: number;
}

/** Returns the items that tell about a picture and are none: EXIF, and XMP or other text by its media type.
 *  data of the file; infos its item information box   -> MetadataItem[], or undefined where its entries cannot be followed
 *  Throws: RangeError where a number leads out of the file.
 *  Source: ISO/IEC 14496-12, 8.11.6 (versions 2 and 3 of an entry name its type). */
export function metadataItems(data: Buffer, infos: IsoBox): readonly MetadataItem[] | undefined {
  const isWide = data.readUInt8(infos.body) !== 0;
  const entries = isoBoxes(data, infos.body + (isWide ? 8 : 6), infos.end);
  if (entries === undefined) return undefined;
  const items: MetadataItem[] = [];
  for (const { type, body, end } of entries) {
    const version = data.readUInt8(body);
    if (type !== "infe" || version < 2) continue;
    const id = version === 2 ? data.readUInt16BE(body + 4) : data.readUInt32BE(body + 4);
    // After the id two bytes of protection, then the type.
    const at = body + (version === 2 ? 8 : 10);
    const kind = data.toString("latin1", at, Math.min(at + 4, end));
    if (kind === "Exif") items.push({ id, kind: "exif" });
    if (kind === "mime") items.push({ id, kind: "xmp" });
  }
  return items;
}

/** A picture of many tiles has some hundreds; without a limit a small file could ask for millions. */
const mostExtents = 100_000;

/** Returns where each item lies.
 *  data of the file; locations its item location box; inner where the content of its item data box begins, if it has one
 *  -> stretches by id of the item; an item that lies in another file or in another item has none
 *  Throws: RangeError where a number leads out of the file, or nothing sensible can be meant.
 *  Source: ISO/IEC 14496-12, 8.11.3 (versions 0 to 2; method 0 counts from the file, 1 from the item data box). */
export function itemPlaces(data: Buffer, locations: IsoBox, inner: number | undefined): Map<number, readonly Extent[]> {
  let at = locations.body;
  const read = (size: number): number => {
    at += size;
    if (size === 0) return 0;
    if (size === 8) return Number(data.readBigUInt64BE(at - 8));
    return data.readUIntBE(at - size, size);
  };
  const version = read(1);
  read(3);
  const sizes = read(2);
  const [ofOffset, ofLength, ofBase] = [sizes >> 12, (sizes >> 8) & 15, (sizes >> 4) & 15];
  const ofIndex = version === 0 ? 0 : sizes & 15;
  for (const size of [ofOffset, ofLength, ofBase, ofIndex]) {
    if (size !== 0 && size !== 4 && size !== 8) throw new RangeError(`a number of ${size} bytes`);
  }
  const places = new Map<number, readonly Extent[]>();
  let count = 0;
  for (let left = read(version < 2 ? 2 : 4); left > 0; left--) {
    const id = read(version < 2 ? 2 : 4);
    const method = version === 0 ? 0 : read(2) & 15;
    const reference = read(2);
    const base = read(ofBase);
    const start = method === 0 ? 0 : inner;
    const extents: Extent[] = [];
    for (let more = read(2); more > 0; more--) {
      if (++count > mostExtents) throw new RangeError("too many stretches");
      read(ofIndex);
      const from = read(ofOffset) + base + (start ?? 0);
      extents.push({ from, to: from + read(ofLength) });
    }
    if (places.has(id)) throw new RangeError(`item ${id} lies in two places`);
    if (reference === 0 && method < 2 && start !== undefined) places.set(id, extents);
  }
  return places;
}
