import { deflateSync } from "node:zlib";
import { makeZip, type ZipPart } from "./makeZip.ts";

const chunk = (type: string, data: Buffer): Buffer => {
  const head = Buffer.alloc(8);
  head.writeUInt32BE(data.length, 0);
  head.write(type, 4, "latin1");
  // Nothing here reads the checksum, and a browser half draws a picture with a wrong one.
  return Buffer.concat([head, data, Buffer.alloc(4)]);
};

/** A picture of one point, with further chunks or bytes after its end. PNG Specification, third edition, 5. */
export function png({ chunks = [], after = "" }: { chunks?: Buffer[]; after?: string } = {}): Buffer {
  const header = Buffer.from([0, 0, 0, 1, 0, 0, 0, 1, 8, 2, 0, 0, 0]);
  return Buffer.concat([
    Buffer.from("\x89PNG\r\n\x1a\n", "latin1"),
    chunk("IHDR", header),
    ...chunks,
    chunk("IDAT", deflateSync(Buffer.from([0, 20, 120, 140]))),
    chunk("IEND", Buffer.alloc(0)),
    Buffer.from(after, "latin1"),
  ]);
}

/** A text chunk of a PNG. */
export const pngText = (text: string): Buffer => chunk("tEXt", Buffer.from(`Comment\0${text}`, "latin1"));

/** The frame of a JPEG: start, JFIF segment, a remark, end. ITU-T T.81, annex B. */
export function jpeg({ remark = "", after = "" }: { remark?: string; after?: string } = {}): Buffer {
  const comment = Buffer.from(remark, "latin1");
  const length = Buffer.alloc(2);
  length.writeUInt16BE(comment.length + 2, 0);
  return Buffer.concat([
    Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16]),
    Buffer.from("JFIF\0\x01\x01\0\0\x01\0\x01\0\0", "latin1"),
    ...(remark === "" ? [] : [Buffer.from([0xff, 0xfe]), length, comment]),
    Buffer.from([0xff, 0xd9]),
    Buffer.from(after, "latin1"),
  ]);
}

/** The frame of a PDF with something in its catalogue. ISO 32000-1, 7.5. */
export const pdf = (inside = ""): Buffer =>
  Buffer.from(
    `%PDF-1.7\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R ${inside} >>\nendobj\ntrailer << /Root 1 0 R >>\n%%EOF\n`,
  );

/** A WebP of one point, lossless. */
export function webp(after = ""): Buffer {
  const data = Buffer.from("2f0000001007101111888808", "hex");
  const size = Buffer.alloc(4);
  size.writeUInt32LE(data.length + 12, 0);
  const part = Buffer.alloc(4);
  part.writeUInt32LE(data.length, 0);
  return Buffer.concat([Buffer.from("RIFF"), size, Buffer.from("WEBPVP8L"), part, data, Buffer.from(after)]);
}

/** The first box of a file of the ISO base media family: "heic" or "avif". ISO/IEC 14496-12, 4.3. */
export function isoPicture(brand: string): Buffer {
  const box = Buffer.alloc(24);
  box.writeUInt32BE(24, 0);
  box.write(`ftyp${brand}\0\0\0\0${brand}mif1`, 4, "latin1");
  return Buffer.concat([box, Buffer.alloc(64)]);
}

const workbookType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml";
/** The parts of the least sheet that a spreadsheet program opens. ECMA-376 part 1, 12.2. */
export const sheetParts = (contentType = workbookType): ZipPart[] => [
  {
    name: "[Content_Types].xml",
    content: `<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="${contentType}"/></Types>`,
  },
  {
    name: "_rels/.rels",
    content:
      '<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>',
  },
  {
    name: "xl/workbook.xml",
    content:
      '<?xml version="1.0"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheets/></workbook>',
  },
  { name: "xl/worksheets/sheet1.xml", content: '<?xml version="1.0"?><worksheet><sheetData/></worksheet>' },
];

/** A sheet with further parts. */
export const sheet = (...more: ZipPart[]): Buffer => makeZip([...sheetParts(), ...more]);

/** A table as a maker's chart comes. */
export const csv = (): Buffer => Buffer.from("flow [L/h],head [m]\n0,3.2\n1000,2.6\n2000,1.4\n");
