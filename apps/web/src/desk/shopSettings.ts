import { type KeptSettings, routes } from "@tidewright/protocol";
import { useEffect } from "react";
import { ask } from "../api/ask.ts";
import { learnTerms } from "../catalogue/shopTerms.ts";
import { createStore, useStore } from "../state/store.ts";
import { onShopChange } from "./shopLists.ts";

const store = createStore<{ readonly kept: KeptSettings | undefined; readonly refused: boolean }>({
  kept: undefined,
  refused: false,
});
let asked = false;

/** Takes in what the server said of the shop. */
export function knowSettings(kept: KeptSettings): void {
  store.patch({ kept, refused: false });
  learnTerms(kept.settings);
}

async function askSettings(): Promise<void> {
  const answer = await ask(routes.settings, {});
  if (answer.ok) knowSettings(answer.value);
  else store.patch({ refused: true });
}

/** What the shop says of itself, undefined until it is known; asked once, and again when somebody changes it. */
function useShopSettings(): KeptSettings | undefined {
  useEffect(() => {
    if (!asked) void askSettings();
    asked = true;
    return onShopChange((change) => {
      if (change === "everything" || change.kind === "settings") void askSettings();
    });
  }, []);
  return useStore(store, (state) => state.kept);
}

/** The shop's name, or nothing while it has none. */
export function useShopName(): string | undefined {
  return useShopSettings()?.settings.name || undefined;
}
