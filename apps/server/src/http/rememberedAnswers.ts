import type { Store } from "@tidewright/store";

/** An answer as it is sent: JSON text, and the tag of what it tells of. */
export interface ReadyAnswer {
  readonly text: string;
  readonly tag: string | undefined;
}

/** Answers to reading routes that hold until something is changed. */
export interface RememberedAnswers {
  /** The answer of a key, made only where it is not remembered. */
  readonly get: (key: string, make: () => Promise<ReadyAnswer>) => Promise<ReadyAnswer>;
}

const mostAnswers = 500;
const mostCharacters = 16_000_000;

/** Returns a memory of answers that forgets everything with every change of the store. Screens of a shop ask for the same
 *  lists again and again, and rows cost more to fetch and check than to send.
 *  store that tells of a change before the change is acknowledged, as the embedded one does: then nobody who was told that
 *  their change is kept reads what was before   -> RememberedAnswers
 *  Valid: for answers that depend on what is kept and on their key alone. */
export function rememberedAnswers(store: Store): RememberedAnswers {
  const answers = new Map<string, Promise<ReadyAnswer>>();
  let characters = 0;
  const forget = (): void => {
    answers.clear();
    characters = 0;
  };
  store.watch(forget);
  return {
    get: (key, make) => {
      const known = answers.get(key);
      if (known !== undefined) return known;
      const made = make();
      answers.set(key, made);
      // An answer that was begun before a change is no longer in the memory when it is done, so it is not counted.
      made.then(
        ({ text }) => {
          if (answers.get(key) !== made) return;
          characters += text.length;
          if (answers.size > mostAnswers || characters > mostCharacters) forget();
        },
        () => {
          if (answers.get(key) === made) answers.delete(key);
        },
      );
      return made;
    },
  };
}
