import type { ProblemDetails } from "@tidewright/protocol";
import { sayAgain, type Words } from "@tidewright/words";

/** What a server says in English is said again by these patterns, the surest first. */
const areas = ["serverProblems", "problems", "pumpProblems"] as const;
const prefix = "urn:tidewright:problem:";

/** Returns why a request was refused and what helps, in the reader's language: by the type of the problem, else by its
 *  status. What only the server knows is added, such as which field or file is meant.
 *  problem as the server told it   words   -> sentences; English where nothing of ours says enough */
export function refusedWords(problem: ProblemDetails, words: Words): string {
  const wait = problem.status === 429 ? waitWords(problem, words) : undefined;
  if (wait !== undefined) return wait;
  const type = `refusals.${problem.type.startsWith(prefix) ? problem.type.slice(prefix.length) : ""}`;
  const status = `refusals.${problem.status}`;
  const key = words.knows(type) ? type : words.knows(status) ? status : undefined;
  if (key === undefined) return exactWords(problem, words);
  const told = words.say(key);
  // These say more than their kind: which field, which name, which file.
  const needed = [400, 409, 422].includes(problem.status);
  const helps = [413, 415].includes(problem.status) && (problem.problems?.length ?? 0) > 0;
  const inEnglish = words.language === "en" && [413, 415, 429, 507].includes(problem.status);
  return [told, needed || helps || inEnglish ? exactWords(problem, words, told) : ""].filter(Boolean).join(" ");
}

/** Returns the title of a refusal in the reader's language, as it stands inside a sentence.
 *  problem   words   -> a few words; the server's own where its type is not known */
export function refusedTitle({ type, title }: Pick<ProblemDetails, "type" | "title">, words: Words): string {
  const key = `serverProblems.title.${type.startsWith(prefix) ? type.slice(prefix.length) : ""}`;
  return words.language !== "en" && words.knows(key) ? words.say(key) : title;
}

/** Returns what the server itself says: every problem with its fix, as sentences. A mere summary in English is left out
 *  where our own words were told already.
 *  problem   words   told what was said before */
export function exactWords({ problems, detail }: ProblemDetails, words: Words, told = ""): string {
  if (!problems?.length) return told === "" || words.language === "en" ? sentence(detail.trim()) : "";
  return problems
    .map(({ message, fix, value }) => sentence(`${messageWords(message, value, words)}: ${inWords(fix, words)}`.trim()))
    .join(" ");
}

/** Returns how long to wait before another try, or undefined where the refusal does not say.
 *  problem with a wait in its detail   words   -> sentence */
export function waitWords(problem: Pick<ProblemDetails, "detail">, words: Words): string | undefined {
  const seconds = waitOf(problem);
  if (seconds === undefined) return undefined;
  return seconds < 90
    ? words.say("refusals.tooManySeconds", { seconds })
    : words.say("refusals.tooManyMinutes", { minutes: Math.ceil(seconds / 60) });
}

/** Returns the wait that a refusal names [s], or undefined where it names none.
 *  Example: waitOf({ type: "", title: "", status: 429, detail: "Try again in 40 s." })  ->  40 */
export function waitOf(problem: Pick<ProblemDetails, "detail">): number | undefined {
  const found = /(\d+)\s*(s|seconds?|min|minutes?)\b/i.exec(problem.detail);
  if (found === null) return undefined;
  return Number(found[1]) * (found[2]!.toLowerCase().startsWith("m") ? 60 : 1);
}

/** A name that somebody gave stands before what is said of it, and stays as it is. */
function messageWords(message: string, value: unknown, words: Words): string {
  const name = `"${String(value)}" `;
  if (words.language === "en" || typeof value !== "string" || !message.startsWith(name)) return inWords(message, words);
  return `„${value}“ ${inWords(message.slice(name.length), words)}`;
}

function inWords(text: string, words: Words): string {
  for (const area of areas) {
    const said = sayAgain(text, words, area);
    if (said !== text) return said;
  }
  return text;
}

function sentence(text: string): string {
  if (text === "") return "";
  const begun = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(begun) ? begun : `${begun}.`;
}
