/** Returns the entity tag of a version or revision number (RFC 9110, 8.8.3), a strong one. A look sets answers apart that
 *  show the same version differently, such as a job whose customer was renamed.
 *  version number; look letters, digits, hyphens and underscores, or none   -> text in quotes
 *  Example: entityTag(7)  ->  "\"7\""
 *  Example: entityTag(7, "k3Xq")  ->  "\"7.k3Xq\"" */
export function entityTag(version: number, look = ""): string {
  return look === "" ? `"${version}"` : `"${version}.${look}"`;
}

/** Returns the version an If-Match header names, or undefined where it names none of ours. What else the answer showed does
 *  not count: a change is made from a version.
 *  header text   -> version
 *  Example: versionOf("\"7\"")  ->  7
 *  Example: versionOf("\"7.k3Xq\"")  ->  7 */
export function versionOf(header: string | undefined): number | undefined {
  const found = /^"(\d{1,15})(?:\.[\w-]{1,100})?"$/.exec(header?.trim() ?? "");
  return found ? Number(found[1]) : undefined;
}
