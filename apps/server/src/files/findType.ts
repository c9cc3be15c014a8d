import { fileTypeFromBuffer } from "file-type";
import { sheetType } from "./allowedTypes.ts";
import { checkSheet } from "./checkSheet.ts";
import { csvProblem } from "./csvProblem.ts";
import { hiddenContent } from "./hiddenContent.ts";

/** What bytes are, or what is the matter with them: "is ..." and how to mend it. */
export type TypeFinding =
  | { readonly ok: true; readonly contentType: string }
  | { readonly ok: false; readonly message: string; readonly fix: string };

/** Returns what a file is from its bytes alone, and refuses what hides a second thing inside.
 *  bytes of the whole file   -> TypeFinding
 *  Findings: none. Throws: never.
 *  Valid: whole files; a type that is found may still not be wanted where it is used.
 *  Source: OWASP Cheat Sheet Series, File Upload ("Content-Type Validation", "File Signature Validation"); signatures by
 *  the package file-type; containers by `checkSheet`, text by `csvProblem`. */
export async function findType(bytes: Uint8Array): Promise<TypeFinding> {
  if (bytes.byteLength === 0) return { ok: false, message: "is empty", fix: "choose the file again" };
  // Before anybody else unpacks it: a container is opened by the one who counts.
  if (startsWith(bytes, [0x50, 0x4b])) {
    const trouble = await checkSheet(bytes);
    return trouble ? { ok: false, ...trouble } : { ok: true, contentType: sheetType };
  }
  if (startsWith(bytes, [0xff, 0xfe]) || startsWith(bytes, [0xfe, 0xff])) {
    return { ok: false, message: "is text in UTF-16, and only UTF-8 is read", fix: "save it again as CSV in UTF-8" };
  }
  const found = await fileTypeFromBuffer(bytes).catch(() => undefined);
  // Markup is judged as text below, which can say what it is.
  if (found && !/xml|^text\//.test(found.mime)) {
    // Sequences of the same picture format are the same to a viewer.
    const contentType = found.mime.replace(/-sequence$/, "");
    const trouble = hiddenContent(bytes, contentType);
    return trouble ? { ok: false, ...trouble } : { ok: true, contentType };
  }
  return textType(bytes);
}

function textType(bytes: Uint8Array): TypeFinding {
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return {
      ok: false,
      message: "is of a type that is not known here, and no text in UTF-8",
      fix: "save a picture as JPEG, a table as XLSX or CSV in UTF-8, a paper as PDF",
    };
  }
  // A remark ends at its first end: there is one way to read a thousand of them, and not two for each.
  const markup = /^\s*(?:<!--(?:(?!-->)[\s\S])*-->\s*)*<\s*(!doctype\s+\w+|\?xml|\w+)/i.exec(text);
  if (markup) {
    const what = /<svg[\s>]/i.test(text) ? "an SVG drawing" : "a page or other text with markup";
    return {
      ok: false,
      message: `is ${what}, which could run when it is opened`,
      fix: "send it as PNG or PDF instead",
    };
  }
  if (text.startsWith("#!")) return { ok: false, message: "is a program", fix: "send a picture, a table or a paper" };
  if (/^\s*\{/.test(text)) {
    try {
      JSON.parse(text);
      return { ok: true, contentType: "application/json" };
    } catch {
      // Then it is no JSON; what it is instead is said below.
    }
  }
  const trouble = csvProblem(text);
  return trouble ? { ok: false, ...trouble } : { ok: true, contentType: "text/csv" };
}

const startsWith = (bytes: Uint8Array, start: readonly number[]): boolean =>
  start.every((byte, at) => bytes[at] === byte);
