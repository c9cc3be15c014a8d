import { type IsoBox, isoBoxes } from "./isoBoxes.ts";
import { itemPlaces, metadataItems } from "./isoItems.ts";
import { orientationAlone } from "./orientation.ts";

/** Boxes of the file itself that are the picture or lead to it; moving pictures have their own. Source: ISO/IEC 14496-12,
 *  4.3, 6.2.3 (order of boxes), 8.1.1 and 8.11.1; free space, 8.1.2, holds nothing once it is blank. */
const ofFile = new Set("ftyp styp meta mdat moov moof mfra sidx ssix prft".split(" "));
/** Boxes of a moving picture that tell about it: 8.10.1 (user data), 8.11.1, 11.1 (boxes of makers). */
const aboutMovie = new Set(["udta", "meta", "uuid"]);

/** Returns a HEIC or AVIF without what was written beside the picture: EXIF with place and time, XMP, boxes of makers, films
 *  behind it. What is taken out is overwritten in place, since everything else is found by its distance from the beginning;
 *  the file keeps its size. How the camera was held is a property of the picture, which stays.
 *  bytes of the whole file   -> bytes, or undefined where its boxes and items cannot be followed
 *  Throws: never.
 *  Source: ISO/IEC 14496-12, 8.11 (meta box, items); ISO/IEC 23008-12, 6.5.10 and 6.5.12 (rotation and mirroring are
 *  properties), annex A.2 (EXIF and XMP are items). */
export function bareHeif(bytes: Uint8Array): Uint8Array | undefined {
  const data = Buffer.from(bytes);
  try {
    return blankMetadata(data) ? data : undefined;
  } catch (error) {
    // A number that leads out of the file.
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function blankMetadata(data: Buffer): boolean {
  const boxes = isoBoxes(data, 0, data.length);
  if (boxes === undefined) return false;
  for (const box of boxes) {
    if (box.type === "meta" && !blankItems(data, box)) return false;
    if (box.type === "moov" && !blankMovie(data, box)) return false;
    if (!ofFile.has(box.type)) blankBox(data, box);
  }
  return true;
}

/** Overwrites the items of a meta box that are EXIF or XMP. */
function blankItems(data: Buffer, meta: IsoBox): boolean {
  const inside = isoBoxes(data, meta.body + 4, meta.end);
  if (inside === undefined) return false;
  const boxOf = (type: string) => inside.find((box) => box.type === type);
  const [infos, locations] = [boxOf("iinf"), boxOf("iloc")];
  const items = infos === undefined ? [] : metadataItems(data, infos);
  if (items === undefined) return false;
  if (items.length > 0) {
    if (locations === undefined) return false;
    const places = itemPlaces(data, locations, boxOf("idat")?.body);
    // What is blanked lies in the file once: stretches that lie over each other would keep us busy for hours.
    let left = data.length;
    for (const { id, kind } of items) {
      const extents = places.get(id);
      if (extents === undefined) return false;
      for (const { from, to } of extents) {
        left -= to - from;
        if (to > data.length || from >= to || left < 0) return false;
        data.fill(kind === "xmp" ? 0x20 : 0, from, to);
      }
      const first = extents[0];
      const blank = kind === "xmp" ? Buffer.from('<x:xmpmeta xmlns:x="adobe:ns:meta/"/>') : upright;
      if (first !== undefined && first.to - first.from >= blank.length) blank.copy(data, first.from);
    }
  }
  for (const box of inside) if (box.type === "uuid") blankBox(data, box);
  return true;
}

function blankMovie(data: Buffer, movie: IsoBox): boolean {
  const inside = isoBoxes(data, movie.body, movie.end);
  if (inside === undefined) return false;
  for (const box of inside) {
    if (aboutMovie.has(box.type)) blankBox(data, box);
    if (box.type !== "trak") continue;
    const ofTrack = isoBoxes(data, box.body, box.end);
    if (ofTrack === undefined) return false;
    for (const each of ofTrack) if (aboutMovie.has(each.type)) blankBox(data, each);
  }
  return true;
}

/** A blank box is free space. */
function blankBox(data: Buffer, { start, body, end }: IsoBox): void {
  data.write("free", start + 4, "latin1");
  data.fill(0, body, end);
}

/** An EXIF item that says that the picture stands upright, as its properties have turned it: ISO/IEC 23008-12, A.2.1, four bytes of
 *  distance to the body. */
const upright = Buffer.concat([Buffer.alloc(4), orientationAlone(1)]);
