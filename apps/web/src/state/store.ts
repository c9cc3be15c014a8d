import { useSyncExternalStore } from "react";

/** One value that many watch; changed only as a whole or by a patch. */
export interface Store<State extends object> {
  get(): State;
  patch(change: Partial<State>): void;
  subscribe(listener: () => void): () => void;
}

/** Returns a store that holds `initial` until patched; listeners are told after each change. */
export function createStore<State extends object>(initial: State): Store<State> {
  let state = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    patch(change) {
      state = { ...state, ...change };
      for (const listener of listeners) listener();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** Returns what `select` takes from the store and renders again when that changes; `select` must not make new objects. */
export function useStore<State extends object, Part>(store: Store<State>, select: (state: State) => Part): Part {
  const now = () => select(store.get());
  // The same again for pictures that are drawn outside a browser.
  return useSyncExternalStore(store.subscribe, now, now);
}
