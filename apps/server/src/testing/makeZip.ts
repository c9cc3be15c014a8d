import { crc32, deflateRawSync } from "node:zlib";

/** One part of an archive for a test; `says` lies about its unpacked size, `sharesDataOf` points into another part. */
export interface ZipPart {
  readonly name: string;
  readonly content: Uint8Array | string;
  readonly says?: number;
  readonly locked?: true;
}

/** An archive as the ZIP application note 6.3 writes it: local headers, central directory, end record.
 *  `overlapping` lets every part's data be the data of the first, as an overlapping bomb does. */
export function makeZip(
  parts: readonly ZipPart[],
  { overlapping = false, before = "", remark = "" }: { overlapping?: boolean; before?: string; remark?: string } = {},
): Buffer {
  const pieces: Buffer[] = [Buffer.from(before, "latin1")];
  const directory: Buffer[] = [];
  let at = pieces[0]!.length;
  let firstAt: number | undefined;
  for (const part of parts) {
    const content = typeof part.content === "string" ? Buffer.from(part.content) : Buffer.from(part.content);
    const packed = deflateRawSync(content);
    const name = Buffer.from(part.name);
    const shared = Buffer.alloc(26);
    shared.writeUInt16LE(20, 0);
    shared.writeUInt16LE(0x0800 | (part.locked ? 1 : 0), 2);
    shared.writeUInt16LE(8, 4);
    shared.writeUInt32LE(0, 6);
    shared.writeUInt32LE(zlibCrc(content), 10);
    shared.writeUInt32LE(packed.length, 14);
    shared.writeUInt32LE(part.says ?? content.length, 18);
    shared.writeUInt16LE(name.length, 22);
    const local = Buffer.concat([Buffer.from("PK\x03\x04", "latin1"), shared, name, packed]);
    const entry = Buffer.alloc(46);
    entry.write("PK\x01\x02", 0, "latin1");
    entry.writeUInt16LE(20, 4);
    shared.copy(entry, 6, 0, 24);
    entry.writeUInt32LE(overlapping ? (firstAt ?? at) : at, 42);
    directory.push(Buffer.concat([entry, name]));
    firstAt ??= at;
    if (overlapping && directory.length > 1) continue;
    pieces.push(local);
    at += local.length;
  }
  const central = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.write("PK\x05\x06", 0, "latin1");
  end.writeUInt16LE(parts.length, 8);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(at, 16);
  end.writeUInt16LE(Buffer.byteLength(remark), 20);
  return Buffer.concat([...pieces, central, end, Buffer.from(remark)]);
}

const zlibCrc = (content: Buffer): number => (typeof crc32 === "function" ? crc32(content) : ownCrc(content));

function ownCrc(content: Buffer): number {
  let crc = 0xffffffff;
  for (const byte of content) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
