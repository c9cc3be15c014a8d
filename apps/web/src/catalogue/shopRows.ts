import { type CatalogueRow, routes } from "@tidewright/protocol";
import { ask } from "../api/ask.ts";
import { deskCache } from "../desk/deskCache.ts";
import { onChange, type Told } from "../keeping/changes.ts";
import { createStore } from "../state/store.ts";

// What stands here knows rows and not pumps, so that a page can ask for them before the reader of pumps has arrived.

/** One of the shop's own pumps as it is kept. */
export type OwnPumpRow = Pick<CatalogueRow, "id" | "data">;

/** Rows as far as they are known; `asked` once the server has said which there are. */
interface ShopRows {
  readonly rows: readonly OwnPumpRow[];
  readonly asked: boolean;
}

const none: readonly OwnPumpRow[] = [];
const store = createStore<ShopRows>({ rows: none, asked: false });

/** Name of the rows among what the desk keeps on this device; like its lists they go when somebody signs out. */
const cacheName = "ownPumps";
/** Time until what could not be read is read again [ms]; each failure after another doubles it up to the most. */
const readAgain = { first: 1000, most: 60_000 };
/** Pause after a change before the rows are read, so that a table of pumps that comes in is not read row by row [ms]. */
const gather = 150;

/** The shop's own pumps as they are known at this moment: none on trial and in a page that no shop stands behind. */
export const presentRows = (): readonly OwnPumpRow[] => store.get().rows;

/** True once the server has said which pumps the shop has. */
export const areRowsKnown = (): boolean => store.get().asked;

/** Tells of every change of the rows; returns how to stop it. */
export function watchRows(listener: () => void): () => void {
  let last = presentRows();
  return store.subscribe(() => {
    const { rows } = store.get();
    if (rows === last) return;
    last = rows;
    listener();
  });
}

/** Takes over rows that came another way than by asking for all of them, such as with a shared design. */
export function takeRows(rows: readonly OwnPumpRow[]): void {
  // The same again must not set everything that watches to work.
  if (JSON.stringify(rows) !== JSON.stringify(presentRows())) store.patch({ rows });
}

let kept: Promise<void> | undefined;

/** Done once what this device knows from before is there. */
export function readKeptRows(): Promise<void> {
  kept ??= (async () => {
    const known = await deskCache.get(cacheName).catch(() => undefined);
    if (!areRowsKnown() && Array.isArray(known)) takeRows(known.filter(isRow));
  })();
  return kept;
}

const isRow = (value: unknown): value is OwnPumpRow =>
  typeof value === "object" && value !== null && typeof (value as { id?: unknown }).id === "string";

let flight: Promise<void> | undefined;
let again = false;
let failures = 0;
let waiting: ReturnType<typeof setTimeout> | undefined;

/** Asks the server for the shop's own pumps, which come into force as soon as they are there; done once it has answered or
 *  cannot be reached, and what was known before stands then. */
function fetchShopCatalogue(): Promise<void> {
  clearTimeout(waiting);
  flight ??= (async () => {
    do {
      again = false;
      await askOnce();
    } while (again);
  })().finally(() => {
    flight = undefined;
  });
  return flight;
}

async function askOnce(): Promise<void> {
  const answer = await ask(routes.catalogueRows, { params: { kind: "pump" } });
  if (answer.ok) {
    failures = 0;
    const rows = answer.value.items.map(({ id, data }) => ({ id, data }));
    takeRows(rows);
    store.patch({ asked: true });
    void deskCache.put(cacheName, rows).catch(() => undefined);
    listen();
  } else if (answer.reason === "unreachable") {
    // The line that tells of changes may be up all the while, so nothing else would bring this to mind again.
    later(Math.min(readAgain.most, readAgain.first * 2 ** failures++));
  }
}

function later(after: number): void {
  clearTimeout(waiting);
  waiting = setTimeout(() => void fetchShopCatalogue(), after);
}

let listening = false;

function listen(): void {
  if (!listening) onChange(hear);
  listening = true;
}

function hear(told: Told): void {
  if (told.kind !== "lineBack" && !(told.kind === "catalogue" && told.row === "pump")) return;
  // What is under way may have been read before the change.
  if (flight === undefined) later(gather);
  else again = true;
}

/** Puts the shop's own pumps in force for a page that keeps designs: from this device at once, then from the server, and
 *  again whenever somebody changes one. It may be called as often as one likes, such as after signing in.
 *  -> done once the server has answered or cannot be reached */
export async function followShopCatalogue(): Promise<void> {
  void readKeptRows();
  if (!areRowsKnown()) await fetchShopCatalogue();
}
