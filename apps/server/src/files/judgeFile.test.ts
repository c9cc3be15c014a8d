import { loadWords, sayAgain } from "@tidewright/words";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeZip } from "../testing/makeZip.ts";
import { csv, isoPicture, jpeg, pdf, png, pngText, sheet, sheetParts, webp } from "../testing/sampleFiles.ts";
import { allowedTypes, mostBytes } from "./allowedTypes.ts";
import { judgeFile } from "./judgeFile.ts";

const kept = {
  "image/jpeg": jpeg(),
  "image/png": png(),
  "image/webp": webp(),
  "image/avif": isoPicture("avif"),
  "image/heic": isoPicture("heic"),
  "image/heif": isoPicture("mif1"),
  "application/pdf": pdf(),
  "text/csv": csv(),
  "application/json": Buffer.from('{"tank":{"volume":{"value":300,"unit":"L"}}}'),
  "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet": sheet(),
};

/** The message about a file that must be refused. */
async function refusal(kind: keyof typeof allowedTypes, bytes: Buffer, name = "Maker's file"): Promise<string> {
  const judged = await judgeFile(kind, name, bytes);
  if (judged.ok) throw new Error(`${name} was taken as ${judged.contentType}`);
  expect(judged.problem.message).toContain(`"${name}"`);
  expect(judged.problem.fix).not.toBe("");
  // What a shop reads in German is made of these texts: one that is worded anew here has to be worded anew there.
  const german = await loadWords("de");
  const said = judged.problem.message.slice(`"${name}" `.length);
  for (const text of [said, judged.problem.fix]) expect(sayAgain(text, german, "serverProblems")).not.toBe(text);
  return `${judged.status} ${judged.problem.message}`;
}

describe("a file is what its content says", () => {
  for (const [kind, types] of Object.entries(allowedTypes) as [keyof typeof allowedTypes, readonly string[]][]) {
    it(`as ${kind}: exactly ${types.join(", ")}`, async () => {
      for (const [type, bytes] of Object.entries(kept)) {
        const judged = await judgeFile(kind, "anything.exe", bytes);
        expect({ type, ok: judged.ok }).toEqual({ type, ok: types.includes(type) });
        if (judged.ok) expect(judged.contentType).toBe(type);
      }
    });
  }

  it("and a text of many remarks is judged at once: they are read in one way only", async () => {
    // Read in every way that they can be parted, sixty would take longer than anybody lives.
    expect(await refusal("chart", Buffer.from(`${"<!---->".repeat(60)}x`))).toMatch(/no table/);
    expect(await refusal("chart", Buffer.from(`${"<!-- - -->\n".repeat(60)}<svg>`))).toMatch(/SVG/);
  });

  it("and its name's ending changes nothing", async () => {
    expect(await refusal("photo", Buffer.from("<html><script>alert(1)</script></html>"), "tank.png")).toMatch(
      /^415 .*markup/,
    );
    expect(await refusal("photo", Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>'))).toMatch(
      /^415 .*SVG/,
    );
  });
});

describe("a file that runs or hides something is refused with its name, what it is and the fix", () => {
  const svg = '<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>';
  const cases: readonly (readonly [string, Buffer, RegExp])[] = [
    ["an SVG", Buffer.from(svg), /SVG/],
    ["an SVG behind a remark", Buffer.from(`<!-- a chart -->\n${svg.slice(21)}`), /SVG/],
    ["an SVG with a byte order mark", Buffer.concat([Buffer.from("\ufeff"), Buffer.from(svg)]), /SVG/],
    ["a page", Buffer.from("\n\n <!DOCTYPE html><title>chart</title>"), /markup/],
    ["markup of any kind", Buffer.from('<?xml version="1.0"?><chart/>'), /markup/],
    ["a script", Buffer.from("alert(1), fetch('/api/customers'), 1, 2;"), /no table/],
    ["a shell script", Buffer.from("#!/bin/sh\nrm -rf 1,2\n"), /program/],
    ["a Windows program", Buffer.concat([Buffer.from("MZ"), Buffer.alloc(200)]), /msdownload|portable-exec/],
    ["a Linux program", Buffer.concat([Buffer.from("\x7fELF\x02\x01\x01"), Buffer.alloc(200)]), /elf/],
    ["a moving picture", Buffer.from("GIF89a\x01\0\x01\0\0\0\0;", "latin1"), /gif/],
    ["a picture with markup in a remark", jpeg({ remark: "<script>alert(1)</script>" }), /two things/],
    ["a picture with markup in a text part", png({ chunks: [pngText("<html><body onload=alert(1)>")] }), /two things/],
    ["a picture with a page behind it", png({ after: "<script>alert(1)</script>" }), /after the end|two things/],
    ["a WebP with more behind it", webp("<b>more</b>"), /after the end/],
    ["a broken PNG", png().subarray(0, 40), /breaks off/],
    ["a picture that is an archive too", jpeg({ after: sheet().toString("latin1") }), /archive/],
    ["a PDF with a page at its beginning", Buffer.from("%PDF-1.7\n<script>alert(1)</script>\n%%EOF"), /two things/],
    ["a PDF with a script", pdf("/OpenAction << /S /JavaScript /JS (app.alert(1)) >>"), /JavaScript/],
    ["a PDF that starts a program", pdf("/OpenAction << /S /Launch /F (cmd.exe) >>"), /Launch/],
    ["a PDF with a file in it", pdf("/Names << /Type /EmbeddedFile >>"), /EmbeddedFile/],
    ["a table in UTF-16", Buffer.from("\ufeffflow,head\n0,3\n", "utf16le"), /UTF-8/],
    ["a table with a zero", Buffer.from("flow,head\n0,3\n1,\0\n"), /signs/],
    ["a table with a formula", Buffer.from("flow,head\n0,3\n1,2\n=cmd|'/c calc'!A1,2\n"), /line 4/],
    ["prose", Buffer.from("Dear customer, this is not a chart.\n"), /no table/],
    ["nothing", Buffer.alloc(0), /empty/],
    ["noise", Buffer.from([0x91, 0x80, 0xff, 0xfe, 0x00, 0x11]), /not known/],
  ];
  for (const [what, bytes, said] of cases) {
    it(`${what}`, async () => {
      for (const kind of ["photo", "chart", "paper", "logo", "intake"] as const) {
        expect(await refusal(kind, bytes)).toMatch(said);
      }
    });
  }
});

describe("a picture that says it is huge, or breaks off, is refused", () => {
  const hugePng = png();
  hugePng.writeUInt32BE(60_000, 16);
  hugePng.writeUInt32BE(60_000, 20);
  const hugeWebp = webp();
  hugeWebp.writeUInt32LE(0x0fffffff, 21);
  const hugeHeic = Buffer.concat([
    isoPicture("heic"),
    Buffer.from("\0\0\0\x14ispe\0\0\0\0\0\0\xea\x60\0\0\xea\x60", "latin1"),
  ]);
  // A frame header of 65500 by 65500 points, then the end. ITU-T T.81, B.2.2.
  const frame = Buffer.from([0xff, 0xc0, 0, 11, 8, 0xff, 0xdc, 0xff, 0xdc, 1, 1, 0x11, 0]);
  const hugeJpeg = Buffer.concat([jpeg().subarray(0, -2), frame, Buffer.from([0xff, 0xd9])]);
  it.each([
    ["PNG", hugePng, "60000 x 60000"],
    ["WebP", hugeWebp, "16384 x 16384"],
    ["HEIC", hugeHeic, "60000 x 60000"],
    ["JPEG", hugeJpeg, "65500 x 65500"],
  ])("as %s, with its numbers", async (_what, bytes, numbers) => {
    expect(await refusal("photo", bytes)).toContain(`of ${numbers} points, more than the 100 million`);
  });
  it("but not one of a hundred million points", async () => {
    const large = png();
    large.writeUInt32BE(10_000, 16);
    large.writeUInt32BE(10_000, 20);
    expect((await judgeFile("logo", "logo.png", large)).ok).toBe(true);
  });
  it("as JPEG without an end", async () => {
    const scan = Buffer.from([0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 1, 2, 3, 4]);
    const broken = Buffer.concat([jpeg().subarray(0, -2), scan]);
    expect(await refusal("photo", broken)).toMatch(/breaks off/);
    expect((await judgeFile("photo", "a", Buffer.concat([broken, Buffer.from([0xff, 0xd9])]))).ok).toBe(true);
  });
});

describe("a sheet is unpacked by one who counts", () => {
  const zeros = Buffer.alloc(40 * 1024 * 1024);
  const main = sheetParts();
  const cases: readonly (readonly [string, Buffer, RegExp])[] = [
    ["macros", sheet({ name: "xl/vbaProject.bin", content: "x" }), /macros/],
    ["macros by its type", makeZip(sheetParts("application/vnd.ms-excel.sheet.macroEnabled.main+xml")), /macros/],
    ["old macros", sheet({ name: "xl/macrosheets/sheet1.xml", content: "<x/>" }), /macros/],
    ["an outer workbook", sheet({ name: "xl/externalLinks/externalLink1.xml", content: "<x/>" }), /links/],
    ["a connection", sheet({ name: "xl/connections.xml", content: "<x/>" }), /links/],
    ["a packed-in file", sheet({ name: "xl/embeddings/oleObject1.bin", content: "x" }), /packed in/],
    ["a control", sheet({ name: "xl/activeX/activeX1.xml", content: "<x/>" }), /controls/],
    [
      "a picture fetched from elsewhere",
      sheet({
        name: "xl/drawings/_rels/drawing1.xml.rels",
        content:
          '<Relationships><Relationship Id="r" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/image" Target="http://192.0.2.1/a.png" TargetMode="External"/></Relationships>',
      }),
      /links/,
    ],
    ["entities", sheet({ name: "xl/styles.xml", content: '<!DOCTYPE a [<!ENTITY b "&c;&c;">]><a/>' }), /definitions/],
    ["a program", sheet({ name: "xl/setup.exe", content: "MZ" }), /setup\.exe/],
    ["a class", sheet({ name: "Applet.class", content: "x" }), /Applet/],
    ["a path upwards", sheet({ name: "../../etc/cron.d/job.xml", content: "x" }), /cannot be read safely/],
    ["an absolute path", sheet({ name: "/etc/job.xml", content: "x" }), /cannot be read safely/],
    ["a drive", sheet({ name: "C:/job.xml", content: "x" }), /cannot be read safely/],
    ["a backslash", sheet({ name: "..\\job.xml", content: "x" }), /cannot be read safely/],
    ["a part twice", sheet({ name: "XL/workbook.xml", content: "<x/>" }), /twice/],
    ["a lock", sheet({ name: "xl/a.xml", content: "x", locked: true }), /password/],
    ["a part that grows", sheet({ name: "xl/a.xml", content: zeros }), /too large/],
    ["a part that grows and denies it", sheet({ name: "xl/a.xml", content: zeros, says: 10 }), /safely|too large/],
    [
      "parts that grow together",
      sheet(...[1, 2, 3].map((each) => ({ name: `xl/${each}.xml`, content: zeros.subarray(0, 30 * 1024 * 1024) }))),
      /too large/,
    ],
    [
      "a thousand parts",
      sheet(...Array.from({ length: 1000 }, (_, at) => ({ name: `xl/${at}.xml`, content: "<x/>" }))),
      /too large/,
    ],
    [
      "parts that overlap",
      makeZip(
        Array.from({ length: 50 }, (_, at) => ({ name: `xl/a${10 + at}.xml`, content: zeros.subarray(0, 1000) })),
        {
          overlapping: true,
        },
      ),
      /too large/,
    ],
    ["a program before it", makeZip(main, { before: "PK\x07\x08 run me" }), /before the sheet|safely/],
    ["no sheet", makeZip([{ name: "readme.xml", content: "<x/>" }]), /no XLSX/],
    ["a broken end", sheet().subarray(0, -10), /safely/],
  ];
  for (const [what, bytes, said] of cases) {
    it(`with ${what} it is refused`, async () => {
      expect(await refusal("chart", bytes)).toMatch(said);
    });
  }

  it("with links that a reader clicks and settings of a printer it is taken", async () => {
    const relation =
      '<Relationships><Relationship Id="r" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/hyperlink" Target="https://example.org" TargetMode="External"/></Relationships>';
    const bytes = sheet(
      { name: "xl/worksheets/_rels/sheet1.xml.rels", content: relation },
      { name: "xl/printerSettings/printerSettings1.bin", content: "paper" },
    );
    expect(await judgeFile("chart", "pump.xlsx", bytes)).toMatchObject({ ok: true });
  });
});

it("a file one byte over the limit of its kind is refused, one at the limit is not", async () => {
  const most = mostBytes("logo");
  const padding = Buffer.alloc(most - png({ chunks: [pngText("")] }).length, "a").toString("latin1");
  const largest = png({ chunks: [pngText(padding)] });
  expect(largest.length).toBe(1024 * 1024);
  expect((await judgeFile("logo", "logo.png", largest)).ok).toBe(true);
  expect(await refusal("logo", Buffer.concat([largest, Buffer.alloc(1)]))).toMatch(/^413 .*1 MB/);
});

it("a file that was damaged anywhere is judged all the same", async () => {
  const samples = Object.values(kept);
  const change = fc.record({ at: fc.nat(), by: fc.nat({ max: 255 }), cut: fc.boolean() });
  await fc.assert(
    fc.asyncProperty(
      fc.nat({ max: samples.length - 1 }),
      fc.array(change, { maxLength: 6 }),
      async (which, changes) => {
        let bytes = Buffer.from(samples[which]!);
        for (const { at, by, cut } of changes) {
          const place = at % Math.max(1, bytes.length);
          if (cut) bytes = bytes.subarray(0, place);
          else if (bytes.length > 0) bytes[place] = by;
        }
        for (const kind of ["photo", "chart", "intake"] as const) {
          const judged = await judgeFile(kind, "damaged", bytes);
          if (judged.ok) expect(allowedTypes[kind]).toContain(judged.contentType);
          else expect(judged.problem.fix).not.toBe("");
        }
      },
    ),
    { numRuns: 500 },
  );
});
