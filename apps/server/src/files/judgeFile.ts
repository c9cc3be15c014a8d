import type { Problem } from "@tidewright/design";
import type { FileKind } from "@tidewright/protocol";
import { allowedTypes, mostBytes, typeName } from "./allowedTypes.ts";
import { barePicture } from "./bare/barePicture.ts";
import { displayName } from "./fileName.ts";
import { findType } from "./findType.ts";
import { mostPoints, pictureSize } from "./pictureSize.ts";

/** A file that may be kept, with the bytes to keep, or why not. `status` 413 too large, 415 not wanted, 422 no file at all. */
export type FileJudgement =
  | { readonly ok: true; readonly name: string; readonly contentType: string; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly status: 413 | 415 | 422; readonly problem: Problem };

/** Returns whether a file may be kept, by its content alone; neither its name's ending nor a header counts. A picture is kept
 *  without what a camera wrote beside it.
 *  kind what it is kept for; given name as sent; bytes the whole file   -> FileJudgement with a name fit for display
 *  Findings: none. Throws: never.
 *  Valid: any bytes.
 *  Source: OWASP Cheat Sheet Series, File Upload. */
export async function judgeFile(kind: FileKind, given: string, bytes: Uint8Array): Promise<FileJudgement> {
  const name = displayName(given);
  if (bytes.byteLength > mostBytes(kind)) return tooLarge(kind, given);
  const found = await findType(bytes);
  const wanted = allowedTypes[kind];
  const refused = (status: 415 | 422, message: string, fix: string): FileJudgement => ({
    ok: false,
    status,
    problem: { path: "/file", message: `"${name}" ${message}`, value: name, fix },
  });
  if (!found.ok) return refused(bytes.byteLength === 0 ? 422 : 415, found.message, found.fix);
  if (!wanted.includes(found.contentType)) {
    return refused(
      415,
      `is ${typeName(found.contentType)} by its content, which is not kept as ${kindWords[kind]}`,
      `send ${wanted.map(typeName).join(", ")}`,
    );
  }
  const size = pictureSize(bytes, found.contentType);
  // A few bytes may say that they are more than a screen that shows them has memory for.
  if (size !== undefined && size.width * size.height > mostPoints) {
    return refused(
      415,
      `is a picture of ${size.width} x ${size.height} points, more than the ${mostPoints / 1e6} million that are kept`,
      "make it smaller, or take a smaller picture",
    );
  }
  const bare = barePicture(bytes, found.contentType);
  // Kept as it is it might tell a place, though the screen says that none is kept.
  if (bare === undefined) {
    return refused(
      415,
      `is ${typeName(found.contentType)} that is damaged, so that what a camera wrote into it cannot be taken out`,
      "save the picture again with another program",
    );
  }
  // Taken bare a JPEG ends with its mark of the end, unless it broke off before.
  if (found.contentType === "image/jpeg" && (bare.at(-2) !== 0xff || bare.at(-1) !== 0xd9)) {
    return refused(415, "is a JPEG that breaks off", "choose the picture again, or save it anew");
  }
  return { ok: true, name, contentType: found.contentType, bytes: bare };
}

/** Returns the judgement of a file of which more bytes came than are kept.
 *  kind what it is kept for; given its name as sent   -> FileJudgement, refused */
export function tooLarge(kind: FileKind, given: string): FileJudgement {
  const name = displayName(given);
  const megabytes = mostBytes(kind) / (1024 * 1024);
  return {
    ok: false,
    status: 413,
    problem: {
      path: "/file",
      message: `"${name}" is larger than ${megabytes} MB, the most for ${kindWords[kind]}`,
      value: name,
      fix: "make it smaller, or take a smaller picture",
    },
  };
}

const kindWords: Readonly<Record<FileKind, string>> = {
  photo: "a photo",
  chart: "a chart",
  logo: "a logo",
  paper: "a paper",
  intake: "part of an intake",
};
