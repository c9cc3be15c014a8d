import { deleteDB, openDB } from "idb";
import type { ListCache } from "./keptList.ts";

const database = "tidewright-desk";
const open = () => openDB(database, 1, { upgrade: (db) => void db.createObjectStore("lists") });

/** Lists as they were at the last visit, on this device. */
export const deskCache: ListCache = {
  async get(name) {
    const db = await open();
    try {
      return await db.get("lists", name);
    } finally {
      db.close();
    }
  },
  async put(name, value) {
    const db = await open();
    try {
      await db.put("lists", value, name);
    } finally {
      db.close();
    }
  },
};

/** Takes the lists off this device, such as when somebody signs out. */
export async function forgetDesk(): Promise<void> {
  await deleteDB(database).catch(() => undefined);
}
