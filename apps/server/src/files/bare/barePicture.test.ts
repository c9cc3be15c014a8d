import { crc32, inflateSync } from "node:zlib";
import { loadWords, sayAgain } from "@tidewright/words";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cameraAvif, cameraJpeg, cameraPng, cameraWebp } from "../../testing/cameraPhotos.ts";
import { isoPicture, jpeg, pngText, png as pointPng, webp as pointWebp } from "../../testing/sampleFiles.ts";
import { judgeFile } from "../judgeFile.ts";
import { barePicture } from "./barePicture.ts";

/** What none of the photos may hold afterwards: their place as text, the maker, and the tag of a GPS directory in EXIF,
 *  0x8825, as an entry of type LONG. EXIF 2.3, 4.6.3 A. */
const telling = ["53.55", "Invented", "GPS", "\x88\x25\0\x04", "\x25\x88\x04\0", "2026:03:01"];

const bare = (bytes: Uint8Array, type: string): Buffer => {
  const found = barePicture(bytes, type);
  if (found === undefined) throw new Error(`${type} was refused`);
  return Buffer.from(found);
};
const tellsOf = (bytes: Buffer): string[] => telling.filter((each) => bytes.includes(Buffer.from(each, "latin1")));

/** Segments of a JPEG up to its first scan: marker and content. ITU-T T.81, B.1.1.4. */
function segmentsOf(data: Buffer): { readonly marker: number; readonly body: Buffer }[] {
  const found: { marker: number; body: Buffer }[] = [];
  for (let at = 2; ; ) {
    const marker = data.readUInt16BE(at);
    const end = at + 2 + data.readUInt16BE(at + 2);
    found.push({ marker, body: data.subarray(at + 4, end) });
    if (marker === 0xffda) return [...found, { marker: 0, body: data.subarray(end) }];
    at = end;
  }
}

/** Chunks of a PNG, with whether their sums are right. PNG Specification, third edition, 5.3 and 5.5. */
function chunksOf(data: Buffer): { readonly name: string; readonly body: Buffer; readonly sound: boolean }[] {
  const found: { name: string; body: Buffer; sound: boolean }[] = [];
  for (let at = 8; at < data.length; ) {
    const end = at + 12 + data.readUInt32BE(at);
    const sound = crc32(data.subarray(at + 4, end - 4)) === data.readUInt32BE(end - 4);
    found.push({ name: data.toString("latin1", at + 4, at + 8), body: data.subarray(at + 8, end - 4), sound });
    at = end;
  }
  return found;
}

/** Chunks of a WebP. WebP Container Specification, "RIFF File Format". */
function piecesOf(data: Buffer): { readonly name: string; readonly body: Buffer }[] {
  expect(data.readUInt32LE(4)).toBe(data.length - 8);
  const found: { name: string; body: Buffer }[] = [];
  for (let at = 12; at < data.length; ) {
    const size = data.readUInt32LE(at + 4);
    found.push({ name: data.toString("latin1", at, at + 4), body: data.subarray(at + 8, at + 8 + size) });
    at += 8 + size + (size & 1);
  }
  return found;
}

/** One entry, orientation, of type SHORT, once, 6: written by hand from TIFF 6.0, section 2, and EXIF 2.3, 4.6.4 A. */
const sideways = Buffer.from(
  "4d4d002a00000008" + "0001" + "0112" + "0003" + "00000001" + "00060000" + "00000000",
  "hex",
);

describe("a photo that a camera wrote a place into is kept without it", () => {
  it("as JPEG, with its tables, its coded picture, its colour profile and how it was held", () => {
    expect(tellsOf(cameraJpeg)).not.toEqual([]);
    const kept = bare(cameraJpeg, "image/jpeg");
    expect(tellsOf(kept)).toEqual([]);
    const isPicture = ({ marker }: { readonly marker: number }) =>
      !(marker >= 0xffe0 && marker <= 0xffef) && marker !== 0xfffe;
    expect(segmentsOf(kept).filter(isPicture)).toEqual(segmentsOf(cameraJpeg).filter(isPicture));
    const beside = segmentsOf(kept).filter((each) => !isPicture(each));
    expect(beside.map(({ marker, body }) => [marker.toString(16), body.toString("latin1", 0, 4)])).toEqual([
      ["ffe0", "JFIF"],
      ["ffe1", "Exif"],
      ["ffe2", "ICC_"],
    ]);
    expect(beside[1]!.body.subarray(6)).toEqual(sideways);
    expect(beside[2]).toEqual(segmentsOf(cameraJpeg).find(({ marker }) => marker === 0xffe2));
  });

  it("as PNG, with its points, its colour profile and how it was held", () => {
    const kept = bare(cameraPng, "image/png");
    const before = chunksOf(cameraPng);
    expect(before.map(({ name }) => name)).toEqual(expect.arrayContaining(["tEXt", "zTXt", "iTXt", "eXIf"]));
    expect(tellsOf(kept)).toEqual([]);
    const after = chunksOf(kept);
    expect(after.map(({ name }) => name).sort()).toEqual(["IDAT", "IEND", "IHDR", "eXIf", "iCCP", "pHYs"]);
    for (const { name, body, sound } of after) {
      expect(sound).toBe(true);
      if (name === "eXIf") expect(body).toEqual(sideways);
      else expect(body).toEqual(before.find((each) => each.name === name)!.body);
    }
    const points = after.find(({ name }) => name === "IDAT")!.body;
    // Six rows of a filter byte and eight points of three bytes.
    expect(inflateSync(points).length).toBe(6 * (1 + 8 * 3));
  });

  it("as WebP, with its points, its colour profile, how it was held, and flags that say so", () => {
    const kept = bare(cameraWebp, "image/webp");
    expect(tellsOf(kept)).toEqual([]);
    const [before, after] = [piecesOf(cameraWebp), piecesOf(kept)];
    expect(before.map(({ name }) => name)).toEqual(["VP8X", "ICCP", "VP8L", "EXIF", "XMP "]);
    expect(after.map(({ name }) => name)).toEqual(["VP8X", "ICCP", "VP8L", "EXIF"]);
    // Flags of the extended form: profile 0x20, EXIF 0x08, XMP 0x04.
    expect([before[0]!.body[0]! & 0x2c, after[0]!.body[0]! & 0x2c]).toEqual([0x2c, 0x28]);
    expect(after.slice(1, 3)).toEqual(before.slice(1, 3));
    expect(after[3]!.body).toEqual(sideways);
  });

  it("as AVIF, with its points where they were", () => {
    const kept = bare(cameraAvif, "image/avif");
    expect(tellsOf(cameraAvif)).not.toEqual([]);
    expect(tellsOf(kept)).toEqual([]);
    expect(kept.length).toBe(cameraAvif.length);
    // Everything but the two items is the same: EXIF of a place takes up 200 bytes and more, the place in XMP 77.
    const changed = [...kept].filter((byte, at) => byte !== cameraAvif[at]).length;
    expect(changed).toBeGreaterThan(100);
    expect(changed).toBeLessThan(400);
    const properties = (data: Buffer) => data.subarray(data.indexOf("iprp"), data.indexOf("mdat"));
    expect(properties(kept)).toEqual(properties(cameraAvif));
    expect(properties(kept).includes("irot")).toBe(true);
  });

  it("and stays as it is when it is taken a second time", () => {
    for (const [bytes, type] of photos) {
      const once = bare(bytes, type);
      expect(bare(once, type).equals(once)).toBe(true);
    }
  });

  it("whatever kind of file it is sent as", async () => {
    const judged = await judgeFile("chart", "chart.jpg", cameraJpeg);
    expect(judged.ok && tellsOf(Buffer.from(judged.bytes))).toEqual([]);
  });
});

describe("what stands elsewhere in a picture", () => {
  const segment = (marker: number, body: string): Buffer => {
    const head = Buffer.from([0xff, marker, 0, 0]);
    head.writeUInt16BE(body.length + 2, 2);
    return Buffer.concat([head, Buffer.from(body, "latin1")]);
  };
  /** Puts segments behind the first bytes of a JPEG. */
  const withSegments = (...segments: Buffer[]) =>
    Buffer.concat([cameraJpeg.subarray(0, 2), ...segments, cameraJpeg.subarray(2)]);

  it("goes from a JPEG: papers of makers, IPTC, previews, provenance, with filling before it or without", () => {
    const more = [
      segment(0xed, "Photoshop 3.0\x008BIM place 53.55"),
      segment(0xe2, "MPF\0 53.55"),
      segment(0xe1, "http://ns.adobe.com/xmp/extension/\0 53.55"),
      segment(0xe4, "53.55"),
      segment(0xeb, "JP 53.55"),
      segment(0xe0, "JFXX\0 53.55"),
      Buffer.from([0xff, 0xff, 0xff]),
      segment(0xfe, "53.55"),
    ];
    expect(bare(withSegments(...more), "image/jpeg").equals(bare(cameraJpeg, "image/jpeg"))).toBe(true);
    const printed = bare(withSegments(segment(0xee, "Adobe\0\x64\0\0\0\0\0")), "image/jpeg");
    // Without it a viewer takes a picture for print for its own negative.
    expect(printed.includes("Adobe")).toBe(true);
  });

  it("goes from behind a JPEG: a film, a second picture", () => {
    const film = Buffer.concat([cameraJpeg, Buffer.from("\0\0\0\x18ftypmp42 53.55"), cameraJpeg]);
    expect(bare(film, "image/jpeg").equals(bare(cameraJpeg, "image/jpeg"))).toBe(true);
  });

  it("stays in a JPEG that breaks off inside its picture, and in one with stray bytes between its parts", () => {
    const scan = cameraJpeg.lastIndexOf(Buffer.from([0xff, 0xda]));
    const broken = cameraJpeg.subarray(0, scan + 30);
    const kept = bare(broken, "image/jpeg");
    expect(tellsOf(kept)).toEqual([]);
    expect(kept.subarray(-30)).toEqual(broken.subarray(-30));
    const stray = withSegments(segment(0xfe, "53.55"), Buffer.from("stray 53.55"));
    expect(bare(stray, "image/jpeg").equals(bare(cameraJpeg, "image/jpeg"))).toBe(true);
  });

  it("goes from a WebP of the simple form, and from chunks that nobody knows", () => {
    const chunk = Buffer.from("NOTE\x06\0\0\x0053.55 EXIF\x05\0\0\x0053.55\0", "latin1");
    const more = Buffer.concat([pointWebp(), chunk]);
    more.writeUInt32LE(more.length - 8, 4);
    expect(bare(more, "image/webp").equals(pointWebp())).toBe(true);
  });

  it("goes from a PNG, chunks of makers too", () => {
    expect(bare(pointPng({ chunks: [pngText("53.55")] }), "image/png").equals(pointPng())).toBe(true);
  });

  it("goes from a HEIC: items in a box of their own, boxes of makers, a film behind it", () => {
    const { file, place } = heic();
    expect(tellsOf(file)).toEqual(["53.55"]);
    const kept = bare(file, "image/heic");
    expect(tellsOf(kept)).toEqual([]);
    expect(kept.length).toBe(file.length);
    expect(kept.subarray(place, place + 5).toString()).toBe("coded");
    expect(kept.toString("latin1").split("free").length - 1).toBe(2);
  });
});

describe("a picture whose parts cannot be told apart is refused, for it may tell a place all the same", () => {
  const cases: readonly (readonly [string, Buffer, string])[] = [
    ["a JPEG that ends before its picture", cameraJpeg.subarray(0, 300), "image/jpeg"],
    ["a JPEG with a part that is longer than the file", jpeg().fill(0xff, 4, 6), "image/jpeg"],
    ["a JPEG with a part of no length", jpeg().fill(0, 4, 6), "image/jpeg"],
    ["a WebP that breaks off", cameraWebp.subarray(0, -100), "image/webp"],
    ["an AVIF with an item outside", heic({ from: 1e6 }).file, "image/avif"],
    ["an AVIF with an item without a place", heic({ id: 7 }).file, "image/avif"],
    ["an AVIF that breaks off", cameraAvif.subarray(0, 400), "image/avif"],
  ];
  for (const [what, bytes, type] of cases) {
    it(`: ${what}`, async () => {
      expect(barePicture(bytes, type)).toBeUndefined();
      const judged = await judgeFile("photo", "sump", bytes);
      expect(judged).toMatchObject({ ok: false, status: 415, problem: { path: "/file" } });
      if (judged.ok) return;
      const said = judged.problem.message.replace(/^"sump" /, "");
      expect(sayAgain(said, await loadWords("de"), "serverProblems")).toMatch(/beschädigt/);
    });
  }

  it("is none that was damaged anywhere else: the others are answered, without a place, and at once", () => {
    const change = fc.record({
      at: fc.nat(),
      by: fc.nat({ max: 255 }),
      cut: fc.constantFrom(false, false, false, true),
    });
    fc.assert(
      fc.property(fc.nat({ max: photos.length - 1 }), fc.array(change, { maxLength: 8 }), (which, changes) => {
        const [whole, type] = photos[which]!;
        let bytes = Buffer.from(whole);
        for (const { at, by, cut } of changes) {
          const place = at % Math.max(1, bytes.length);
          if (cut) bytes = bytes.subarray(0, place);
          else if (bytes.length > 0) bytes[place] = by;
        }
        const kept = barePicture(bytes, type);
        // An orientation is the most that is added.
        if (kept !== undefined) expect(kept.length).toBeLessThanOrEqual(bytes.length + 64);
      }),
      { numRuns: 2000 },
    );
  });
});

it("anything but a picture is kept as it is", () => {
  const text = Buffer.from("flow,head\n0,53.55\n");
  expect(barePicture(text, "text/csv")).toBe(text);
  expect(barePicture(isoPicture("avif"), "image/avif")?.length).toBe(isoPicture("avif").length);
});

const photos: readonly (readonly [Buffer, string])[] = [
  [cameraJpeg, "image/jpeg"],
  [cameraPng, "image/png"],
  [cameraWebp, "image/webp"],
  [cameraAvif, "image/avif"],
  [heic().file, "image/heic"],
];

/** A HEIC by hand: an EXIF item in the item data box, XMP among the coded data, a box of a maker and a film. ISO/IEC 14496-12,
 *  4.2, 8.11.3 (version 1), 8.11.6 (version 2). `from` moves the XMP item, `id` renames it in the list of places alone. */
function heic({ from, id = 2 }: { readonly from?: number; readonly id?: number } = {}) {
  const box = (type: string, ...parts: Buffer[]): Buffer => {
    const body = Buffer.concat(parts);
    const head = Buffer.alloc(8);
    head.writeUInt32BE(body.length + 8, 0);
    head.write(type, 4, "latin1");
    return Buffer.concat([head, body]);
  };
  const hex = (text: string) => Buffer.from(text.replaceAll(" ", ""), "hex");
  const entry = (number: string, kind: string, rest = "") =>
    box("infe", hex(`02000000 ${number} 0000`), Buffer.from(`${kind}\0${rest}`, "latin1"));
  const exif = Buffer.from("\0\0\0\0MM\0*\0\0\0\x08 53.55", "latin1");
  const xmp = Buffer.from("<x:xmpmeta>53.55</x:xmpmeta>");
  const ftyp = box("ftyp", Buffer.from("heic\0\0\0\0heicmif1", "latin1"));
  const meta = (placeOfXmp: number): Buffer => {
    const number = Buffer.alloc(4);
    number.writeUInt32BE(placeOfXmp, 0);
    return box(
      "meta",
      hex("00000000"),
      box("iinf", hex("00000000 0002"), entry("0001", "Exif"), entry("0002", "mime", "application/rdf+xml\0")),
      box(
        "iloc",
        // Version 1; offsets and lengths of four bytes; two items.
        hex("01000000 4400 0002"),
        // In the item data box, from its first byte.
        hex(`0001 0001 0000 0001 00000000 000000${exif.length.toString(16).padStart(2, "0")}`),
        hex(`000${id} 0000 0000 0001`),
        number,
        hex(`000000${xmp.length.toString(16).padStart(2, "0")}`),
      ),
      box("idat", exif),
    );
  };
  const place = ftyp.length + meta(0).length + 8;
  const parts = [
    ftyp,
    meta(from ?? place + 5),
    box("mdat", Buffer.from("coded"), xmp),
    box("uuid", Buffer.from("0123456789abcdef 53.55")),
    box("mpvd", Buffer.from("a film of 53.55")),
  ];
  return { file: Buffer.concat(parts), place };
}
