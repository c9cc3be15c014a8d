import type { Look } from "../output/deliver.ts";

/** Returns a heading with what stands under it; nothing where there is nothing to say. */
export function section(title: string, body: string, { styles }: Look): string {
  return body === "" ? "" : `${styles.bold(title)}\n${body}`;
}

/** Returns parts with a blank line between them, empty ones left out. */
export function paragraphs(parts: readonly string[]): string {
  return parts.filter((part) => part !== "").join("\n\n");
}
