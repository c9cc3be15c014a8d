/** The languages of the screens. */
export const languages = ["en", "de"] as const;
/** One of `languages`. */
export type Language = (typeof languages)[number];
