/** What a column can hold, in every database alike; documents and settings are JSON text. */
export type SqlValue = string | number | null | Uint8Array;

/** A connection or transaction: statements carry `?` where values go, in SQL that both databases understand. */
export interface Sql {
  /** Every row a query answers. */
  rows<Row>(text: string, values?: readonly SqlValue[]): Promise<Row[]>;
  /** How many rows a statement changed. */
  change(text: string, values?: readonly SqlValue[]): Promise<number>;
}

/** A database that keeps what it acknowledged: `write` answers only once its transaction is on the disk. */
export interface SqlDatabase {
  readonly dialect: "sqlite" | "postgres";
  /** Sees what is committed, never half of a transaction. */
  readonly read: Sql;
  /** Runs one transaction; a thrown error undoes it. */
  write<Value>(work: (sql: Sql) => Promise<Value>): Promise<Value>;
  /** Runs reads that all see one moment. */
  snapshot<Value>(work: (sql: Sql) => Promise<Value>): Promise<Value>;
  /** Writes everything into one new file of the embedded kind, or answers false where only a copy row by row can. */
  copyInto(path: string): Promise<boolean>;
  /** Takes what was overwritten out of logs and free pages, as far as the database can. */
  scrub(): Promise<void>;
  /** Sends a short text to every program that listens on this database, this one included. */
  broadcast(text: string): void;
  /** Hears what is broadcast from now on; `missed` is called where some of it may not have been heard. */
  listen(listener: (text: string) => void, missed: () => void): Promise<void>;
  close(): Promise<void>;
}
