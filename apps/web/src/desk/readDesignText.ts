import { readDesign } from "@tidewright/design";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";

/** Reads a design that somebody brings as a file. A file of its own, so that what loads it when it is wanted loads the
 *  reader alone and not all that its packages hold. */
export const readDesignText = (text: string) => readDesign(text, currentCatalogue());
