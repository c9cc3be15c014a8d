import { pumpRefs } from "@tidewright/design";
import type { Reader } from "@tidewright/protocol";
import type { App } from "../app.ts";
import { allowed } from "../doors/asker.ts";
import { whoAsks } from "../doors/whoAsks.ts";
import type { Bearings } from "../http/bearingsOf.ts";
import { shopPumps } from "../routes/shopCatalogue.ts";
import type { PictureThread } from "./pictureThread.ts";

/** Where the screen's program puts itself; the picture stands before it until then. */
const place = '<div id="bench">';
const mostKept = 50;

/** Fills the page of a design with its first picture. */
export type FillFirstPicture = (
  bearings: Bearings,
  reader: Reader,
  designId: string,
  html: string,
) => Promise<string | undefined>;

/** Returns what draws a first picture of a design into its page, so that something is to be seen before the screen's program
 *  has arrived. It asks who looks first: a page is sent to everybody, a picture of a customer's tank is not.
 *  app; thread that draws   -> (bearings of the request, reader to be spoken to, design that the address names, html as built) -> html with the
 *  picture, or undefined where the page is to be sent as it was built */
export function firstPictures(app: App, thread: PictureThread): FillFirstPicture {
  const known = new Map<string, Promise<string | undefined>>();
  // An erasure changes documents under their numbers, and no name that was taken away is left in a picture; a pump of the
  // shop's own changes what a document comes to.
  app.store.watch(({ kind }) => {
    if (kind === "erasure" || kind === "catalogue" || kind === "missed") known.clear();
  });
  const draw = async (document: unknown, reader: Reader): Promise<string | undefined> => {
    const named = new Set(pumpRefs(document).map(({ ref }) => ref));
    const own = await shopPumps(app.store);
    return thread.draw(
      document,
      own.filter(({ id }) => named.has(id)),
      reader,
    );
  };
  return async (bearings, reader, designId, html) => {
    try {
      if (!html.includes(place) || allowed(await whoAsks(app.doors, bearings, false), "look") !== "yes")
        return undefined;
      const latest = await app.store.designs.latest(designId);
      if (latest === undefined) return undefined;
      const key = `${designId} ${latest.number} ${latest.at} ${JSON.stringify(reader)}`;
      const drawing = known.get(key) ?? draw(latest.document, reader);
      known.delete(key);
      known.set(key, drawing);
      if (known.size > mostKept) known.delete(known.keys().next().value!);
      const picture = await drawing.catch(() => undefined);
      if (picture === undefined) {
        known.delete(key);
        return undefined;
      }
      // A function, so that a dollar sign in a name stays one.
      return html.replace(place, () => `<div id="first-picture" aria-hidden="true">${picture}</div>${place}`);
    } catch {
      // The page works without its picture, and its own program tells what is the matter.
      return undefined;
    }
  };
}
