import type { Page } from "playwright-core";
import { type ServedShop, serveShop } from "./servedShop.ts";

/** Who works in the tried shop, each with the same password. */
const people = [
  { name: "Ina", role: "staff" },
  { name: "Jo", role: "staff" },
  { name: "Uwe", role: "readOnly" },
] as const;
const password = "four words in a row";

/** Everything that is made at the machine itself, before anybody has to sign in. */
export type Prepare<Made> = (shop: ServedShop) => Promise<Made>;

/** A shop where everybody signs in, as on any address that others reach; it is looked at from 127.0.0.1 all the same, so
 *  that the pages may do what they may behind TLS.
 *  prepare fills it   options more of the server   -> the shop and what was made */
export async function servePeopledShop<Made>(
  prepare: Prepare<Made>,
  ...options: readonly string[]
): Promise<{ readonly shop: ServedShop; readonly made: Made }> {
  const shop = await serveShop();
  for (const person of people) await shop.api("POST", "api/accounts", { ...person, password });
  const made = await prepare(shop);
  await shop.restart("--host", "0.0.0.0", ...options);
  return { shop, made };
}

/** Signs somebody in at the door that a page shows. */
export async function signInAs(page: Page, name: (typeof people)[number]["name"]): Promise<void> {
  await page.fill("[autocomplete=username]", name);
  await page.fill("[autocomplete=current-password]", password);
  await page.keyboard.press("Enter");
  await page.waitForSelector(".door", { state: "detached" });
}
