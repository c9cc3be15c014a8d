import type { MessageKey } from "./en/english.ts";
import type { Language } from "./language.ts";
import type { Message } from "./message.ts";
import { learnPatterns, type PatternRoom, patternRooms } from "./sayAgain.ts";

/** Areas whose texts are said by one screen alone. They come with it, so that a first visit does not fetch the texts of
 *  every other screen. */
export const rooms = ["desk", "doors", "provenance", "pumps", "start", ...patternRooms] as const;
/** One of `rooms`. */
export type Room = (typeof rooms)[number];

/** Texts by key; those of a room may be put in later. */
export type Texts = Readonly<Partial<Record<MessageKey, Message>>>;

type Loaders = Readonly<Record<Room, () => Promise<Texts>>>;

const loaders: Readonly<Record<Language, Loaders>> = {
  en: {
    desk: async () => (await import("./en/desk.ts")).desk,
    doors: async () => (await import("./en/doors.ts")).doors,
    provenance: async () => (await import("./en/provenance.ts")).provenance,
    pumps: async () => (await import("./en/pumps.ts")).pumps,
    start: async () => (await import("./en/start.ts")).start,
    problems: async () => (await import("./en/problems.ts")).problems,
    elevation: async () => (await import("./en/elevation.ts")).elevation,
    pumpProblems: async () => (await import("./en/pumpProblems.ts")).pumpProblems,
    serverProblems: async () => (await import("./en/serverProblems.ts")).serverProblems,
  },
  de: {
    desk: async () => (await import("./de/desk.ts")).desk,
    doors: async () => (await import("./de/doors.ts")).doors,
    provenance: async () => (await import("./de/provenance.ts")).provenance,
    pumps: async () => (await import("./de/pumps.ts")).pumps,
    start: async () => (await import("./de/start.ts")).start,
    problems: async () => (await import("./de/problems.ts")).problems,
    elevation: async () => (await import("./de/elevation.ts")).elevation,
    pumpProblems: async () => (await import("./de/pumpProblems.ts")).pumpProblems,
    serverProblems: async () => (await import("./de/serverProblems.ts")).serverProblems,
  },
};

/** Returns the texts of a room in a language, by key.
 *  language   room   -> texts
 *  Throws: where the file cannot be had, such as without a network.
 *  Source: own construction. */
export async function loadRoom(language: Language, room: Room): Promise<Texts> {
  if (!isPatternRoom(room)) return loaders[language][room]();
  // What is said in English elsewhere is recognised by its English text, and for readers of English it stands as it is.
  if (language === "en") return {};
  const [texts, patterns] = await Promise.all([loaders[language][room](), loaders.en[room]()]);
  learnPatterns(room, patterns);
  return texts;
}

const isPatternRoom = (room: Room): room is PatternRoom => patternRooms.some((each) => each === room);
