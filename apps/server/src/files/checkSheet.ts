/// <reference path="./yauzl.d.ts" />
import { type Entry, fromBufferPromise, type ZipFile } from "yauzl";
import type { Trouble } from "./csvProblem.ts";

/** Most parts of a container, most bytes when unpacked, and most times that one part may grow. A shop's chart has a few
 *  dozen parts of some kilobytes. */
const most = { parts: 1000, unpacked: 64 * 1024 * 1024, part: 32 * 1024 * 1024 } as const;

/** Parts that run, reach out or pack another file in. Source: ECMA-376 part 1, chapter 12 (external workbook references,
 *  connections), and part 1, 15.2 (embedded objects, controls); macros: MS-OFFMACRO2, 2.2. */
const running: readonly (readonly [RegExp, string])[] = [
  [/vba|macrosheets|dialogsheets/i, "macros"],
  [/activex|ctrlprops|customui|webextensions/i, "controls"],
  [/externallinks|connections\.xml|querytables|xmlmaps/i, "links to other files"],
  [/embeddings|oleobject|package\d*\.bin/i, "another file packed in"],
];
const wanted = /\.(xml|rels|vml|png|jpe?g|gif|emf|wmf|tiff?)$|^xl\/printersettings\/[^/]+\.bin$/i;

/** Returns what keeps a container from being a plain spreadsheet in XLSX, or undefined for one.
 *  bytes of the whole file   -> Trouble or undefined
 *  Findings: none. Throws: never.
 *  Valid: reads every part once and keeps none, and stops as soon as a limit is passed, whatever sizes are declared.
 *  Source: ECMA-376 part 2 (packages); ZIP application note 6.3; Fifield, A better zip bomb (WOOT 2019), section 2, for
 *  parts that overlap. */
export async function checkSheet(bytes: Uint8Array): Promise<Trouble | undefined> {
  let zip: ZipFile | undefined;
  try {
    zip = await fromBufferPromise(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), {
      strictFileNames: true,
      validateEntrySizes: true,
      lazyEntries: true,
    });
    return await checkParts(zip, bytes.byteLength);
  } catch (error) {
    return {
      message: `is an archive that cannot be read safely (${error instanceof Error ? error.message : String(error)})`,
      fix: "save the sheet again as XLSX",
    };
  } finally {
    zip?.close();
  }
}

async function checkParts(zip: ZipFile, size: number): Promise<Trouble | undefined> {
  const bomb = { message: "is an archive that grows far too large when unpacked", fix: "save the sheet again as XLSX" };
  if (zip.entryCount > most.parts) return bomb;
  const seen = new Set<string>();
  const spans: [from: number, to: number][] = [];
  let declared = 0;
  let unpacked = 0;
  let workbook = false;
  for await (const entry of zip.eachEntry()) {
    const name = entry.fileName;
    const trouble = nameTrouble(entry, seen);
    if (trouble) return trouble;
    declared += entry.uncompressedSize;
    if (seen.size > most.parts || declared > most.unpacked || entry.uncompressedSize > most.part) return bomb;
    const { fileDataStart } = await zip.readLocalFileHeaderPromise(entry, { minimal: true });
    spans.push([entry.relativeOffsetOfLocalHeader, fileDataStart + entry.compressedSize]);
    if (overlaps(spans)) return bomb;
    if (name.endsWith("/")) continue;
    const isText = /\.(xml|rels|vml)$/i.test(name);
    const pieces: Buffer[] = [];
    for await (const piece of await zip.openReadStreamPromise(entry)) {
      unpacked += (piece as Buffer).length;
      if (unpacked > most.unpacked) return bomb;
      if (isText) pieces.push(piece as Buffer);
    }
    const text = isText ? Buffer.concat(pieces).toString("latin1") : "";
    if (/<!(DOCTYPE|ENTITY)/i.test(text.replaceAll("\0", ""))) {
      return { message: "is a sheet with definitions that no sheet needs", fix: "save the sheet again as XLSX" };
    }
    if (/\.rels$/i.test(name) && reachesOut(text)) {
      return { message: "is a sheet with links to other files", fix: "save the sheet with values instead of links" };
    }
    if (name === "[Content_Types].xml") {
      workbook = text.includes("spreadsheetml.sheet.main+xml");
      if (/macroEnabled/i.test(text))
        return { message: "is a sheet with macros", fix: "save it as XLSX without macros" };
    }
  }
  if (Math.min(...spans.map(([from]) => from)) !== 0 || size < 22) {
    return { message: "has something before the sheet in the same file", fix: "save the sheet again as XLSX" };
  }
  return workbook && seen.has("xl/workbook.xml")
    ? undefined
    : { message: "is an archive and no XLSX sheet", fix: "send a chart as XLSX or CSV, and pictures one by one" };
}

function nameTrouble(entry: Entry, seen: Set<string>): Trouble | undefined {
  const name = entry.fileName;
  const folded = name.toLowerCase();
  if (entry.isEncrypted()) return { message: "is locked with a password", fix: "save it without a password" };
  if (seen.has(folded)) return { message: `has "${name}" in it twice`, fix: "save the sheet again as XLSX" };
  seen.add(folded);
  for (const [pattern, what] of running) {
    if (pattern.test(name)) return { message: `is a sheet with ${what}`, fix: `save it as XLSX without ${what}` };
  }
  return name.endsWith("/") || wanted.test(name)
    ? undefined
    : { message: `is an archive with "${name.slice(0, 100)}" in it`, fix: "send a plain XLSX sheet" };
}

/** A link that a reader clicks stays; anything that a program would fetch by itself does not. */
function reachesOut(relations: string): boolean {
  return (relations.match(/<Relationship\b[^>]*>/gi) ?? []).some(
    (each) => /TargetMode\s*=\s*["']External/i.test(each) && !/\/relationships\/hyperlink["']/.test(each),
  );
}

function overlaps(spans: [from: number, to: number][]): boolean {
  spans.sort((a, b) => a[0] - b[0]);
  return spans.some((span, at) => at > 0 && span[0] < spans[at - 1]![1]);
}
