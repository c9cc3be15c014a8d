import type { FileKind } from "@tidewright/protocol";

/** Media type of a sheet of a spreadsheet program, without macros. */
export const sheetType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

const pictures = ["image/jpeg", "image/png", "image/webp"];
const photos = [...pictures, "image/avif", "image/heic", "image/heif"];

/** What a file of each kind may be, found from its content. No kind takes SVG, HTML or anything else that runs. */
export const allowedTypes: Readonly<Record<FileKind, readonly string[]>> = {
  photo: photos,
  logo: pictures,
  chart: [...pictures, "application/pdf", "text/csv", sheetType],
  paper: ["application/pdf", "image/png", "image/jpeg"],
  intake: [...photos, "application/json"],
};

const names: Readonly<Record<string, string>> = {
  "image/jpeg": "JPEG",
  "image/png": "PNG",
  "image/webp": "WebP",
  "image/avif": "AVIF",
  "image/heic": "HEIC",
  "image/heif": "HEIF",
  "application/pdf": "PDF",
  "text/csv": "CSV",
  "application/json": "JSON",
  [sheetType]: "XLSX",
};

/** Returns what a type is called in a sentence.
 *  contentType media type   -> name; the type itself where it has none
 *  Example: typeName("image/jpeg")  ->  "JPEG" */
export function typeName(contentType: string): string {
  return names[contentType] ?? contentType;
}

/** Most bytes of a file of each kind; a logo is loaded with every page that a customer opens. */
export const mostBytes = (kind: FileKind): number => (kind === "logo" ? 1024 * 1024 : 20 * 1024 * 1024);
