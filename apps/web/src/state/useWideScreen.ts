import { useSyncExternalStore } from "react";

/** As in layout.css: from here on the page is one sheet that does not scroll. */
const query = typeof matchMedia === "undefined" ? undefined : matchMedia("(min-width: 68.75rem)");

/** True where the page is one sheet that does not scroll, as layout.css has it. */
export function isWideScreen(): boolean {
  return query?.matches ?? false;
}

/** Returns `isWideScreen` and renders again when the window passes that width. */
export function useWideScreen(): boolean {
  return useSyncExternalStore(subscribe, isWideScreen);
}

function subscribe(listener: () => void): () => void {
  query?.addEventListener("change", listener);
  return () => query?.removeEventListener("change", listener);
}
