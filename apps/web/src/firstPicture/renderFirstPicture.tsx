import { assess } from "@tidewright/advice";
import { demoCatalogue, type PumpRow, withOwnPumps } from "@tidewright/catalogue";
import { checkKeptDesign } from "@tidewright/design";
import type { Reader } from "@tidewright/protocol";
import { languages, loadWords } from "@tidewright/words";
import { renderToStaticMarkup } from "react-dom/server";
import { screenFormat } from "../format/screenFormat.ts";
import { takeWords } from "../words/useWords.ts";
import { FirstPicture } from "./FirstPicture.tsx";

/** Returns the first picture of a design as markup without scripts or styles of its own, for the page that the server sends;
 *  undefined where the document cannot be read.
 *  document a design document, of this or an older version   pumps of the shop's own that it may name
 *  reader whose language and units are written   -> HTML
 *  Valid: on the server, which loads the built file. */
export async function renderFirstPicture(
  document: unknown,
  pumps: readonly PumpRow[] = [],
  reader: Reader = { language: "en", system: "metric", own: {} },
): Promise<string | undefined> {
  const catalogue = withOwnPumps(demoCatalogue, pumps);
  const reading = checkKeptDesign(document, catalogue);
  if (!reading.ok) return undefined;
  const assessment = assess(reading.design, catalogue);
  const language = languages.find((each) => each === reader.language) ?? "en";
  const format = screenFormat(reader, language);
  // Nothing waits between taking the words and having drawn: two pictures in two languages may be under way.
  takeWords(await loadWords(language, ["elevation"]));
  return renderToStaticMarkup(<FirstPicture design={reading.design} assessment={assessment} format={format} />);
}
