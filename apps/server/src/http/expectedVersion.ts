import { versionOf } from "@tidewright/protocol";
import { Refused } from "../doors/refusal.ts";

/** Returns the version that If-Match names, be it the whole tag as it was received or the number alone.
 *  header text, or undefined   -> version
 *  Throws: `Refused` 428 where it is missing, 400 where it is no tag of ours.
 *  Source: RFC 6585, section 3; RFC 9110, 13.1.1.
 *  Example: expectedVersion("\"7\"")  ->  7
 *  Example: expectedVersion("\"7.k3Xq\"")  ->  7 */
export function expectedVersion(header: string | undefined): number {
  const version = versionOf(header);
  if (version !== undefined) return version;
  if (header === undefined)
    throw new Refused({
      type: "urn:tidewright:problem:tag-wanted",
      title: "The change does not say what it was made from",
      status: 428,
      detail: 'send the ETag of what was read as If-Match, such as If-Match: "7"',
    });
  throw new Refused({
    type: "urn:tidewright:problem:bad-tag",
    title: "If-Match names no version",
    status: 400,
    detail: 'send one ETag as it was received, such as If-Match: "7"; * and lists are not taken',
  });
}
