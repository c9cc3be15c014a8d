import type { Design } from "@tidewright/design";
import { createStore, useStore } from "../state/store.ts";
import type { Keeper, KeeperState } from "./keeper.ts";
import type { Surroundings } from "./localCopies.ts";
import type { ApartParcel } from "./outbox.ts";

/** Work that was set apart because somebody changed the same: told until it is understood. */
export interface SetApart {
  readonly from: Surroundings;
  readonly parcel: ApartParcel<Design>;
}

/** What the bench shows of the keeping of the design on it; `kept` undefined where nothing is kept, as on a trial. */
export interface KeepingState {
  readonly kept: KeeperState | undefined;
  readonly keeper: Keeper | undefined;
  /** Whether this browser lets anything be kept. */
  readonly durable: boolean;
  readonly apart: SetApart | undefined;
  /** Who changed what, until the next such line. */
  readonly theirs: string | undefined;
  /** Whether the door stands before the bench: somebody wants to sign in. */
  readonly signingIn: boolean;
}

const store = createStore<KeepingState>({
  kept: undefined,
  keeper: undefined,
  durable: true,
  apart: undefined,
  theirs: undefined,
  signingIn: false,
});

/** Returns what `select` takes from the state of keeping; `select` must not make new objects. */
export function useKeeping<Part>(select: (state: KeepingState) => Part): Part {
  return useStore(store, select);
}

/** The state of keeping, for what is no component. */
export function presentKeeping(): KeepingState {
  return store.get();
}

/** Changes what is shown of the keeping. */
export function tellKeeping(change: Partial<KeepingState>): void {
  store.patch(change);
}

/** Whether leaving the page would lose something: not written down on this device, or nothing is. */
export function wouldLose(): boolean {
  const { kept, durable } = store.get();
  if (kept === undefined) return false;
  return kept.writing || (!(durable && kept.onDisk) && kept.outbox.phase !== "kept");
}
