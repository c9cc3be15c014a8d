import { useSyncExternalStore } from "react";
import { createStore, useStore } from "../state/store.ts";

const key = "tidewright.flow";

function remembered(): boolean {
  try {
    return localStorage.getItem(key) !== "off";
  } catch {
    return true;
  }
}

const store = createStore<{ readonly on: boolean }>({ on: remembered() });

/** Shows the moving marks or leaves them out, also at the next visit. */
export function showFlow(on: boolean): void {
  store.patch({ on });
  try {
    localStorage.setItem(key, on ? "on" : "off");
  } catch {
    // A full or closed storage is no reason not to follow for now.
  }
}

const still = "(prefers-reduced-motion: reduce)";

/** Returns whether marks move with the water; undefined where the reader wants a page that keeps still. */
export function useFlow(): boolean | undefined {
  const on = useStore(store, (state) => state.on);
  const reduced = useSyncExternalStore(
    (listener) => {
      const query = matchMedia(still);
      query.addEventListener("change", listener);
      return () => query.removeEventListener("change", listener);
    },
    () => matchMedia(still).matches,
  );
  return reduced ? undefined : on;
}
