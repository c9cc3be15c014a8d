import type { ProblemDetails } from "@tidewright/protocol";
import { englishWords, loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { exactWords, refusedTitle, refusedWords } from "./refusedWords.ts";

const german = await loadWords("de");
const problem = (type: string, status: number, more: Partial<ProblemDetails> = {}): ProblemDetails => ({
  type: `urn:tidewright:problem:${type}`,
  title: "What the server calls it",
  status,
  detail: "what the server says of it",
  ...more,
});

/** Types, statuses and details as the server sends them. */
const daily: readonly ProblemDetails[] = [
  problem("sign-in", 401),
  problem("not-allowed", 403),
  problem("not-found", 404),
  problem("conflict", 412),
  problem("too-large", 413),
  problem("media-type", 415),
  problem("bad-document", 422),
  problem("too-many", 429, { detail: "too many wrong passwords came for this name; try again in 60 s" }),
  problem("too-busy", 503),
  problem("store-disk-full", 507),
  problem("store-unreachable", 503),
  problem("store-in-use", 503),
  problem("store-newer", 503),
  problem("store-damaged", 500),
  problem("our-fault", 500),
  problem("wrong-host", 421),
];

describe("why a request was refused", () => {
  it("is told in German for everything that a shop meets, with nothing of the server's English in it", () => {
    for (const each of daily) {
      const told = refusedWords(each, german);
      expect(told).toMatch(/[.!?]$/);
      expect(told).not.toMatch(/\b(the|server says|try again|what|wrong)\b/i);
      expect(refusedTitle(each, german)).not.toBe(each.title);
    }
    // Each of them says something of its own.
    expect(new Set(daily.map((each) => refusedWords(each, german))).size).toBe(daily.length);
  });

  it("names the wait", () => {
    const wait = daily.find(({ status }) => status === 429)!;
    expect(refusedWords(wait, german)).toMatch(/60 Sekunden/);
    expect(refusedWords(wait, englishWords)).toBe("Too many tries. Try again in 60 seconds.");
  });

  it("names the file, as it is called, what is the matter with it and what helps", () => {
    const file = problem("media-type", 415, {
      problems: [
        {
          path: "/file",
          message: '"Sump 2.1 macros.xlsx" is a sheet with macros',
          value: "Sump 2.1 macros.xlsx",
          fix: "save it as XLSX without macros",
        },
      ],
    });
    expect(refusedWords(file, german)).toMatch(
      /^Diese Art .*„Sump 2\.1 macros\.xlsx“ ist eine Tabelle mit Makros: speichern Sie sie als XLSX ohne Makros\.$/,
    );
    expect(refusedWords(file, englishWords)).toMatch(/"Sump 2\.1 macros\.xlsx" is a sheet with macros: save it as/);
  });

  it("adds a password's or a field's own problem", () => {
    const weak = problem("bad-document", 422, {
      problems: [
        {
          path: "/password",
          message: "repeats very few signs",
          fix: "take several words that do not belong together",
        },
      ],
    });
    expect(exactWords(weak, german)).toBe(
      "Wiederholt nur wenige Zeichen: nehmen Sie mehrere Wörter, die nicht zusammengehören.",
    );
  });

  it("stays English, which is still true, where nobody foresaw it", () => {
    expect(refusedWords(problem("of-the-moon", 418), german)).toBe("What the server says of it.");
    const odd = problem("bad-document", 422, { problems: [{ path: "", message: "is odd", fix: "make it even" }] });
    expect(refusedWords(odd, german)).toMatch(/Is odd: make it even\.$/);
    expect(refusedTitle(problem("of-the-moon", 418), german)).toBe("What the server calls it");
  });
});
