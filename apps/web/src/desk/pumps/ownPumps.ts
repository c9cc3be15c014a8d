import { type PumpRow, readOwnPumps } from "@tidewright/catalogue";
import { type CatalogueRow, routes } from "@tidewright/protocol";
import { useEffect } from "react";
import { type Answered, ask } from "../../api/ask.ts";
import { createStore, useStore } from "../../state/store.ts";
import { deskCache } from "../deskCache.ts";
import { type KeptList, keptList } from "../keptList.ts";
import { heedDoor, onShopChange } from "../shopLists.ts";

const params = { kind: "pump" };

/** The server hands all of them out at once. */
async function page(offset: number, limit: number): Promise<Answered<{ items: CatalogueRow[]; total: number }>> {
  const answer = heedDoor(await ask(routes.catalogueRows, { params }));
  if (!answer.ok) return answer;
  const { items } = answer.value;
  return { ...answer, value: { items: items.slice(offset, offset + limit), total: items.length } };
}

/** The shop's own pumps as they are kept, with the versions that a change must name. */
export const ownPumps = keptList<CatalogueRow>({
  name: "ownPumpRows",
  page,
  one: async () => ({ ok: false, reason: "unreachable" }),
  cache: deskCache,
});

/** Changes of one table that comes in are one question [ms]. */
const gather = 250;

/** Returns the shop's own pumps and renders again when they change; asked anew whenever a screen shows them. */
export function useOwnPumps(): KeptList<CatalogueRow> {
  useEffect(() => {
    let soon: ReturnType<typeof setTimeout> | undefined;
    void ownPumps.refresh();
    const stop = onShopChange((change) => {
      if (change !== "everything" && !(change.kind === "catalogue" && change.row === "pump")) return;
      clearTimeout(soon);
      soon = setTimeout(() => void ownPumps.refresh(), gather);
    });
    return () => {
      clearTimeout(soon);
      stop();
    };
  }, []);
  return useStore(ownPumps.store, (state) => state);
}

const read = new WeakMap<CatalogueRow, PumpRow | undefined>();

/** Returns the pump of a kept row; undefined where the row is none, such as out of an old backup. */
export function pumpOf(row: CatalogueRow): PumpRow | undefined {
  if (!read.has(row)) read.set(row, readOwnPumps([row]).pumps[0]);
  return read.get(row);
}

/** Keeps a pump; the list hears of it by the server's word.
 *  pump   version the one it was made from, 0 where it is new   -> the kept row, or why not */
export async function sendPump(pump: PumpRow, version: number): Promise<Answered<CatalogueRow>> {
  return heedDoor(
    await ask(routes.putCatalogueRow, {
      params: { ...params, rowId: pump.id },
      body: { data: pump },
      ifMatch: version,
    }),
  );
}

/** Keeps one pump, as `sendPump`, and has it in the list at once. */
export async function putPump(pump: PumpRow, version: number): Promise<Answered<CatalogueRow>> {
  const answer = await sendPump(pump, version);
  if (answer.ok) ownPumps.put(answer.value);
  return answer;
}

/** Removes a pump.
 *  id   version the one that was seen   -> the row as it was, or why not */
export async function removePump(id: string, version: number): Promise<Answered<CatalogueRow>> {
  const answer = heedDoor(await ask(routes.removeCatalogueRow, { params: { ...params, rowId: id }, ifMatch: version }));
  if (answer.ok || (answer.reason === "refused" && answer.problem.status === 404)) ownPumps.drop(id);
  return answer;
}

/** What just happened to a pump, told above the list; a removed one can be put back from there. */
export interface PumpNews {
  readonly kind: "added" | "removed" | "back";
  readonly pump: PumpRow;
}

const news = createStore<{ readonly latest: PumpNews | undefined }>({ latest: undefined });
export const tellNews = (latest: PumpNews | undefined): void => news.patch({ latest });
export const usePumpNews = (): PumpNews | undefined => useStore(news, (state) => state.latest);

/** Maker and model, as a pump is spoken of. */
export const nameOf = ({ maker, model }: Pick<PumpRow, "maker" | "model">): string => `${maker} ${model}`.trim();
