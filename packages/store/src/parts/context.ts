import type { SqlDatabase } from "../sql/sqlDatabase.ts";
import type { StoreChange } from "../store.ts";
import type { Limits } from "./checks.ts";

/** What every part of the store works with. */
export interface Context {
  readonly database: SqlDatabase;
  readonly limits: Limits;
  /** Makes an id for what the caller did not name. */
  newId(): string;
  /** Tells listeners of a change that is kept. */
  announce(change: StoreChange): void;
}
