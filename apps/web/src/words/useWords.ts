import {
  englishTexts,
  type Language,
  loadRoom,
  loadTexts,
  type Room,
  type Texts,
  type Words,
  wordsOf,
} from "@tidewright/words";
import { createStore, useStore } from "../state/store.ts";

/** Texts that are here, by language; those of a room are put in when it is entered, and words in use know them from then on. */
const here = new Map<Language, Texts>([["en", { ...englishTexts }]]);
const store = createStore<{ readonly words: Words }>({ words: wordsOf("en", here.get("en")!) });

/** The words of the chosen language; renders again when they change. */
export function useWords(): Words {
  return useStore(store, (state) => state.words);
}

/** The words of the chosen language, for what is no component. */
export function words(): Words {
  return store.get().words;
}

/** Speaks with these words from now on: for a picture that is drawn where there is no page. */
export function takeWords(words: Words): void {
  store.patch({ words });
}

/** Rooms that somebody has entered: a change of language brings their texts along. */
const entered = new Set<Room>();
let wished: Language = "en";

/** Turns the page to a language once its texts are there; of two wishes the later one stands.
 *  Where the texts cannot be had, the page keeps the language it speaks. */
export async function speak(language: Language): Promise<void> {
  wished = language;
  try {
    await bring(language);
  } catch {
    return;
  }
  if (wished !== language) return;
  document.documentElement.lang = language;
  if (store.get().words.language !== language) store.patch({ words: wordsOf(language, here.get(language)!) });
}

/** Fetches what a screen says beside what every screen may say.
 *  rooms whose texts the screen says   -> once they can be said
 *  Throws: where the texts cannot be had, as then the screen cannot be had either. */
export async function enter(...rooms: readonly Room[]): Promise<void> {
  for (const room of rooms) entered.add(room);
  const asked = wished;
  try {
    await bring(asked);
  } catch (failed) {
    // The language that was wished for cannot be had; the page goes on in the one it speaks.
    const { language } = store.get().words;
    if (language === asked) throw failed;
    await bring(language);
  }
}

/** Texts of rooms on their way or here, by language and room. */
const coming = new Map<string, Promise<void>>();

/** Fetches what is still wanting of a language for the rooms that were entered, those entered meanwhile included. */
async function bring(language: Language): Promise<void> {
  if (!here.has(language)) {
    const texts = await loadTexts(language);
    if (!here.has(language)) here.set(language, { ...texts });
  }
  const rooms = [...entered];
  await Promise.all(rooms.map((room) => bringRoom(language, room)));
  if (entered.size > rooms.length) await bring(language);
}

function bringRoom(language: Language, room: Room): Promise<void> {
  const name = `${language} ${room}`;
  const already = coming.get(name);
  if (already !== undefined) return already;
  const load = loadRoom(language, room).then((texts) => void Object.assign(here.get(language)!, texts));
  coming.set(name, load);
  // What failed once, such as without a network, is tried again the next time.
  load.catch(() => coming.delete(name));
  return load;
}
