import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, it } from "vitest";
import { german } from "./de/german.ts";
import { english, type MessageKey } from "./en/english.ts";
import { languages } from "./language.ts";
import { messageKeys } from "./messageKeys.ts";
import { loadRoom, rooms } from "./rooms.ts";
import { patternRooms } from "./sayAgain.ts";
import { englishWords, loadTexts, loadWords, wordsOf } from "./words.ts";

type Elements = ReturnType<IntlMessageFormat["getAst"]>;
/** Elements of a parsed text that ask for nothing: plain words, and # inside a plural. */
const [literal, pound] = [0, 7];

/** Names of the values that a text asks for. */
function valuesIn(elements: Elements): string[] {
  return elements.flatMap((element) => {
    const type: number = element.type;
    if (type === literal || type === pound) return [];
    const inner = "options" in element ? Object.values(element.options).flatMap(({ value }) => valuesIn(value)) : [];
    return ["value" in element ? element.value : "", ...inner];
  });
}

const namesIn = (text: string): string[] =>
  [...new Set(valuesIn(new IntlMessageFormat(text, "en", undefined, { ignoreTag: true }).getAst()))].sort();

/** The letters of a text without the names of its values. */
const lettersOf = (text: string) => text.replace(/\{\w+\}/g, "").replace(/[^\p{L}]+$/u, "");

/** Texts that are the same in both languages for a reason: names of makers and sizes, citations, each language's own name. */
const alike =
  /^(catalogue\.(series|device|controller)\.|provenance\.(partLoss\.friction|circuit\.formula)$|fields\.language\.|parts\.family\.)/;
/** Words that both languages have. */
const sameWords = new Set(["Pause", "Name", "Version", "System", "Logo", "PDF", "Imperial", "Zone"]);

describe("the message catalogue", () => {
  it("has the same keys in both languages", () => {
    expect(Object.keys(german).sort()).toEqual(Object.keys(english).sort());
  });

  it("parses, and asks for the same values in both languages", () => {
    const differ = messageKeys.filter((key) => String(namesIn(german[key])) !== String(namesIn(english[key])));
    expect(differ).toEqual([]);
  });

  it("leaves no text empty or with spaces that hang out", () => {
    const untidy = messageKeys.flatMap((key) =>
      [english[key], german[key]].filter((text: string) => text === "" || text.trim() !== text),
    );
    expect(untidy).toEqual([]);
  });

  it("leaves no text in English", () => {
    const left = messageKeys.filter(
      (key) =>
        german[key] === english[key] &&
        /\p{L}{3}/u.test(lettersOf(german[key])) &&
        !alike.test(key) &&
        !sameWords.has(lettersOf(german[key]).trim()),
    );
    expect(left).toEqual([]);
  });

  it("has every key in the area it is named after", () => {
    for (const key of messageKeys) expect(key).toMatch(/^[a-z]\w*\.\S/);
  });
});

describe("rooms", () => {
  it("bring their own area and no other, in both languages, and all of them make up the catalogue", async () => {
    for (const language of languages) {
      const near = Object.keys(await loadTexts(language));
      const each = await Promise.all(
        rooms.map(async (room) => [room, Object.keys(await loadRoom(language, room))] as const),
      );
      for (const [room, keys] of each) expect(keys.filter((key) => !key.startsWith(`${room}.`))).toEqual([]);
      // English texts that are patterns are nobody's to say.
      const wanted = messageKeys.filter(
        (key) => language !== "en" || !patternRooms.some((room) => key.startsWith(`${room}.`)),
      );
      expect([...near, ...each.flatMap(([, keys]) => keys)].sort()).toEqual(wanted.sort());
    }
  });

  it("say their texts once they are there, and names before", async () => {
    expect(englishWords.say("desk.jobs")).toBe("desk.jobs");
    expect((await loadWords("en", ["desk"])).say("desk.jobs")).toBe("Jobs");
    expect((await loadWords("de", ["desk"])).say("doors.password")).toBe("doors.password");
  });
});

describe("the words of a language", () => {
  it("speak a catalogue's label and a limit's source anew, and leave a person's own name as it is", async () => {
    const words = await loadWords("de");
    expect(words.known("Union")).toBe("Verschraubung");
    expect(words.known("geometry")).toBe("Geometrie");
    expect(words.known("Laden am Hafen")).toBe("Laden am Hafen");
    expect(englishWords.known("Union")).toBe("Union");
  });

  // Decimal signs and plural forms: Unicode CLDR, through Intl.
  it("write numbers as their readers do", async () => {
    const words = await loadWords("de");
    expect(words.decimal("8.4 s")).toBe("8,4 s");
    expect(words.decimal("8.4.")).toBe("8,4.");
    expect(words.number(1234.5)).toBe("1.234,5");
    expect(englishWords.decimal("8.4 s")).toBe("8.4 s");
    expect(words.say("bench.figure.dangers", { count: 1 })).toBe("1 Gefahr");
    expect(words.say("bench.figure.dangers", { count: 2 })).toBe("2 Gefahren");
  });

  it("keep German nouns large inside a sentence", async () => {
    expect((await loadWords("de")).inSentence("Förderhöhe")).toBe("Förderhöhe");
    expect(englishWords.inSentence("Static head")).toBe("static head");
  });

  it("tell a date in the order of the language", () => {
    for (const language of languages) {
      const words = wordsOf(language, english as Record<MessageKey, string>);
      const told = words.instant("2031-04-23T10:00:00Z", { dateStyle: "short", timeZone: "UTC" });
      expect(told).toBe(language === "de" ? "23.04.31" : "4/23/31");
    }
  });
});
