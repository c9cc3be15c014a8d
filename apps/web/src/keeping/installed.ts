import { createStore, useStore } from "../state/store.ts";

/** Whether a newer version of the pages lies ready, and how to let it in. */
interface InstalledState {
  readonly letIn: (() => void) | undefined;
}

const store = createStore<InstalledState>({ letIn: undefined });

/** Returns how to load the newer version that lies ready; undefined where there is none. */
export function useNewerVersion(): (() => void) | undefined {
  return useStore(store, (state) => state.letIn);
}

/** How often a page that stays open looks for a newer version [ms]. */
const lookEvery = 60 * 60 * 1000;

/** Lets the browser keep the pages themselves on this device, so that they open without a connection. */
export async function installPages(): Promise<void> {
  // The development server has none, and a page without TLS from another machine may not have any.
  if (!import.meta.env.PROD || navigator.serviceWorker === undefined) return;
  const { Workbox } = await import("workbox-window");
  const pages = new Workbox("./sw.js", { scope: "./" });
  let wanted = false;
  pages.addEventListener("waiting", () => {
    store.patch({
      letIn: () => {
        wanted = true;
        pages.messageSkipWaiting();
      },
    });
  });
  // Another page of this browser may have let the newer version in: this one goes on with what it has loaded.
  pages.addEventListener("controlling", () => {
    if (wanted) location.reload();
  });
  try {
    await pages.register();
    setInterval(() => void pages.update().catch(() => {}), lookEvery);
  } catch {
    // No connection at the very first visit, or storage is closed: the pages work as long as there is a server.
  }
}
