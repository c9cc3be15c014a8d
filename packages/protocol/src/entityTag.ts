/** Returns the entity tag of a version or revision number (RFC 9110, 8.8.3), a strong one.
 *  version number   -> text in quotes
 *  Example: entityTag(7)  ->  "\"7\"" */
export function entityTag(version: number): string {
  return `"${version}"`;
}

/** Returns the version an If-Match header names, or undefined where it names none of ours.
 *  header text   -> version
 *  Example: versionOf("\"7\"")  ->  7 */
export function versionOf(header: string | undefined): number | undefined {
  const found = /^"(\d{1,15})"$/.exec(header?.trim() ?? "");
  return found ? Number(found[1]) : undefined;
}
