import { englishWords, type Language, loadWords, type Words } from "@tidewright/words";
import { createStore, useStore } from "../state/store.ts";

const store = createStore<{ readonly words: Words }>({ words: englishWords });

/** The words of the chosen language; renders again when they change. */
export function useWords(): Words {
  return useStore(store, (state) => state.words);
}

/** The words of the chosen language, for what is no component. */
export function words(): Words {
  return store.get().words;
}

let wished: Language = "en";

/** Turns the page to a language once its texts are there; of two wishes the later one stands.
 *  Where the texts cannot be had, the page keeps the language it speaks. */
export async function speak(language: Language): Promise<void> {
  wished = language;
  const loaded = await loadWords(language).catch(() => undefined);
  if (loaded === undefined || wished !== language) return;
  document.documentElement.lang = language;
  if (store.get().words.language !== language) store.patch({ words: loaded });
}
