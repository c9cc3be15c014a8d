import type { Design } from "@tidewright/design";
import type { RevisionEntry } from "@tidewright/protocol";
import { createStore, useStore } from "../state/store.ts";

/** An older version laid over the drawing to be looked at; the document on the table stays what it is. */
export interface Looking {
  readonly entry: RevisionEntry;
  readonly design: Design;
}

/** Whether the list of versions is out, and which one is looked at. */
export interface VersionsState {
  readonly open: boolean;
  readonly looking: Looking | undefined;
}

const store = createStore<VersionsState>({ open: false, looking: undefined });

/** Returns what `select` takes from the state of the versions. */
export function useVersions<Part>(select: (state: VersionsState) => Part): Part {
  return useStore(store, select);
}

/** Changes what is shown of the versions; closing the list ends looking. */
export function showVersions(change: Partial<VersionsState>): void {
  store.patch(change.open === false ? { open: false, looking: undefined } : change);
}
