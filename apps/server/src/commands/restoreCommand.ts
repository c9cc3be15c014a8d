import { resolve } from "node:path";
import { restore } from "@tidewright/store";

/** Puts a backup into an empty folder or an empty PostgreSQL database.
 *  file of the backup; data folder; database URL where there is one
 *  Throws: StoreFailure, which says what to do. */
export async function restoreCommand(
  file: string,
  { data, database }: { readonly data: string; readonly database: string | undefined },
): Promise<void> {
  await restore(file, database ?? data);
  // A URL bears a password.
  const place = database === undefined ? resolve(data) : "the database of DATABASE_URL";
  process.stdout.write(`${place} holds what ${resolve(file)} held.\n`);
}
