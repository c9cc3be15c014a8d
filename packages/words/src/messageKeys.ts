import { english, type MessageKey } from "./en/english.ts";

/** The name of every text, those of the rooms included, in the order of the catalogue. */
export const messageKeys = /* @__PURE__ */ Object.keys(english) as readonly MessageKey[];
