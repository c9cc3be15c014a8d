const mark = "(erased)";

/** Fields that hold a word of the document's own language or a row of the catalogue, never a person. */
const neverPersonal = new Set(["id", "ref", "kind", "role", "series", "fitting", "valve", "unit"]);

/** The words that point at a person: the whole name, its parts of three letters or more, and each line of the contact. */
export function personalWords(name: string, contact: string): string[] {
  const parts = [name, ...name.split(/[\s,]+/), ...contact.split(/[\n;,]+/)];
  const words = parts.map((part) => part.trim()).filter((part) => part.length >= 3);
  // Longest first, so that a part does not break up the whole.
  return [...new Set(words)].sort((a, b) => b.length - a.length);
}

/** A document without a person: its own name and notes are replaced, and so is each word wherever text holds it as a
 *  whole word, the same everywhere, so that names still point at each other. */
export function erasedDocument(document: unknown, words: readonly string[]): unknown {
  const pattern =
    words.length === 0
      ? undefined
      : new RegExp(`(?<![\\p{L}\\p{N}])(?:${words.map(escaped).join("|")})(?![\\p{L}\\p{N}])`, "giu");
  const visit = (value: unknown, key: string, depth: number): unknown => {
    if (typeof value === "string") {
      if (key === "notes" || key === "note") return "";
      if (depth === 1 && key === "name") return "Design";
      return pattern && !neverPersonal.has(key) ? value.replace(pattern, mark) : value;
    }
    if (Array.isArray(value)) return value.map((item) => visit(item, key, depth + 1));
    if (typeof value === "object" && value !== null) {
      return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, visit(item, name, depth + 1)]));
    }
    return value;
  };
  return visit(document, "", 0);
}

const escaped = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
