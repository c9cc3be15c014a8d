import { z } from "zod";

/** Name of the cookie in which a browser says how its reader wants to be spoken to. It opens no door: it only lets the
 *  server draw the first picture of a page in the reader's own language and units. */
export const readerCookie = "tidewright-reader";

/** How a reader wants to be spoken to: language, system of units, and units of their own by dimension. */
const reader = z.object({
  language: z.string().max(10),
  system: z.enum(["metric", "us", "imperial"]),
  own: z.record(z.string().max(40), z.string().max(20)),
});
/** A reader's language and units. */
export type Reader = z.infer<typeof reader>;

/** Returns the cookie's value for a reader.
 *  reader   -> text that may stand in a cookie
 *  Source: own construction; characters as in RFC 6265, 4.1.1.
 *  Example: writeReader({ language: "de", system: "us", own: {} }).slice(0, 14)  ->  "%7B%22language" */
export function writeReader({ language, system, own }: Reader): string {
  return encodeURIComponent(JSON.stringify({ language, system, own }));
}

/** Returns how to speak to a reader: as their browser's cookie says, else in the language that its requests ask for.
 *  value of the cookie, decoded, where there is one   accepted header Accept-Language, where there is one
 *  spoken languages that can be spoken, the usual one first   -> Reader
 *  Throws: never; what cannot be read counts as not said.
 *  Source: RFC 9110, 12.5.4: of languages that weigh alike the first counts.
 *  Example: readReader(undefined, "fr, en;q=0.5, de-CH", ["en", "de"]).language  ->  "de" */
export function readReader(value: string | undefined, accepted: string | undefined, spoken: readonly string[]): Reader {
  const said = reader.safeParse(parsed(value));
  if (said.success && spoken.includes(said.data.language)) return said.data;
  return { language: firstLanguage(accepted, spoken), system: "metric", own: {} };
}

function parsed(value: string | undefined): unknown {
  try {
    return JSON.parse(value ?? "");
  } catch {
    return undefined;
  }
}

function firstLanguage(accepted = "", spoken: readonly string[]): string {
  const weighed = accepted.split(",").map((each) => {
    const [tag = "", ...rest] = each.trim().split(/\s*;\s*/);
    const weight = rest.map((part) => /^q=([\d.]+)$/.exec(part)?.[1]).find((found) => found !== undefined);
    return { language: tag.slice(0, 2).toLowerCase(), weight: Number(weight ?? 1) };
  });
  const known = weighed.filter(({ language, weight }) => spoken.includes(language) && weight > 0);
  return known.sort((a, b) => b.weight - a.weight)[0]?.language ?? spoken[0]!;
}
