import type { PumpRow } from "@tidewright/catalogue";
import type { App } from "../app.ts";
import { badInput } from "../doors/refusal.ts";
import { bearingsOf } from "../http/bearingsOf.ts";
import { guard } from "../http/guard.ts";
import { jsonTextOf } from "../http/readRequest.ts";
import { shopPumps } from "../routes/shopCatalogue.ts";
import { computations } from "./computeRequest.ts";

/** Whoever may look may compute: the answers keep nothing. */
export const computingAccess = "look";

/** Answers of hydraulics, each on a thread of its own while the store's thread goes on answering.
 *  app, whose threads compute */
export function mountComputing(app: App): void {
  for (const computation of computations) {
    app.hono.post(`/api/${computation}`, async (context) => {
      // It reads no more than a GET does, so that a script may ask without the mark of a page of ours.
      await guard(app, computingAccess, bearingsOf(context), context.req.raw, true);
      const text = await jsonTextOf(context);
      const pumps: readonly PumpRow[] = await shopPumps(app.store);
      const { priceMultipliers: prices } = (await app.store.settings.read()).settings;
      const answer = await app.threads.run({ computation, text, query: context.req.query(), pumps, prices });
      if (answer.ok) return new Response(answer.json, { headers: { "Content-Type": "application/json" } });
      if ("problems" in answer) throw badInput(answer.problems);
      throw new Error(answer.fault);
    });
  }
}
