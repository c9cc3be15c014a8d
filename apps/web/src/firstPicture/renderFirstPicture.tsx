import { assess } from "@tidewright/advice";
import { demoCatalogue, type PumpRow, withOwnPumps } from "@tidewright/catalogue";
import { checkKeptDesign } from "@tidewright/design";
import { renderToStaticMarkup } from "react-dom/server";
import { screenFormat } from "../format/screenFormat.ts";
import { FirstPicture } from "./FirstPicture.tsx";

/** Returns the first picture of a design as markup without scripts or styles of its own, for the page that the server sends;
 *  undefined where the document cannot be read.
 *  document a design document, of this or an older version   pumps of the shop's own that it may name   -> HTML
 *  Valid: on the server, which loads the built file; numbers are in metric units until the page knows better. */
export function renderFirstPicture(document: unknown, pumps: readonly PumpRow[] = []): string | undefined {
  const catalogue = withOwnPumps(demoCatalogue, pumps);
  const reading = checkKeptDesign(document, catalogue);
  if (!reading.ok) return undefined;
  const assessment = assess(reading.design, catalogue);
  const format = screenFormat({ system: "metric", own: {} });
  return renderToStaticMarkup(<FirstPicture design={reading.design} assessment={assessment} format={format} />);
}
