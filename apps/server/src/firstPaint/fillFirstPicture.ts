import type { App } from "../app.ts";

/** Returns the page with a first picture of a design drawn into it, so that something is to be seen before the screen's
 *  program has arrived; undefined where the page is to be sent as it was built.
 *  app; design that the address names; html as built */
export async function fillFirstPicture(_app: App, _designId: string, _html: string): Promise<string | undefined> {
  // The page of a design is sent as built until its picture can be drawn here as the screen draws it. Whoever fills it
  // must first ask who looks: a page is sent to everybody, a picture of a customer's tank is not.
  return undefined;
}
