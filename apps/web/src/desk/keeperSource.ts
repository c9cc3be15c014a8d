import type { StoreChange } from "@tidewright/protocol";
import type { Answered } from "../api/ask.ts";

/** A record with the version that a change must name. */
export type Item = Readonly<Record<string, unknown>> & { readonly version: number };

/** Where a record comes from, how it is kept, and which news concern it. */
export interface KeeperSource<Record extends Item, Fields extends object> {
  readonly key: string;
  load(): Promise<Answered<Record>>;
  save(change: Partial<Fields>, version: number, record: Record): Promise<Answered<Record>>;
  concerns(change: StoreChange): boolean;
  /** The record as this device knows it, for a time without the server. */
  known?(): Record | undefined;
  /** Told of what the server acknowledged. */
  kept?(record: Record): void;
}
