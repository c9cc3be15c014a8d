/** Text as it is searched: small letters without accents, so that "Müller" is found by "muller" in every database. */
export function searchText(...texts: readonly string[]): string {
  return texts
    .join(" ")
    .normalize("NFKD")
    .replace(/\p{Mark}/gu, "")
    .toLowerCase();
}

/** The words of a query as patterns for LIKE with the escape character "\". */
export function searchPatterns(query: string): string[] {
  return searchText(query)
    .split(/\s+/)
    .filter((word) => word !== "")
    .slice(0, 12)
    .map(containing);
}

/** Pattern for LIKE, with the escape character "\", of whatever contains a text. */
export const containing = (text: string): string => `%${text.replace(/[\\%_]/g, (character) => `\\${character}`)}%`;
