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

/** Turns the page to a language once its texts are there. */
export async function speak(language: Language): Promise<void> {
  if (store.get().words.language === language) return;
  const loaded = await loadWords(language);
  document.documentElement.lang = language;
  store.patch({ words: loaded });
}
