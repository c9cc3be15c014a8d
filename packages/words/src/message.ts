import { IntlMessageFormat } from "intl-messageformat";

/** A parsed text: its pieces, in order. */
type Pieces = ReturnType<IntlMessageFormat["getAst"]>;
/** A text in ICU message syntax, or already parsed, as the pages' build leaves it. */
export type Message = string | Pieces;

/** Whether a text says the same whatever is filled in.
 *  message   -> true where it has no syntax in it
 *  Source: ICU MessageFormat, Unicode. */
export const isPlain = (message: Message): message is string => typeof message === "string" && !/['{]/.test(message);

/** Returns a text as something that can be filled in.
 *  message not a plain one   language BCP 47 tag   -> IntlMessageFormat
 *  Throws: a text with bad syntax.
 *  Source: ICU MessageFormat, Unicode. */
export const formatOf = (message: Message, language: string): IntlMessageFormat =>
  new IntlMessageFormat(message, language, undefined, { ignoreTag: true });

/** Returns the pieces of a text.
 *  message   -> plain words and names of values, in order
 *  Throws: a text with bad syntax.
 *  Source: ICU MessageFormat, Unicode. */
export const piecesOf = (message: Message): Pieces =>
  isPlain(message) ? [{ type: 0, value: message }] : formatOf(message, "en").getAst();
