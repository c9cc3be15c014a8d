import { desk } from "./desk.ts";

/** Every text in English, by key; the other languages have the same keys. */
export const english = { ...desk } as const;

/** The name of a text. */
export type MessageKey = keyof typeof english;
