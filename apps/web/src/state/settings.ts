import { readerCookie, writeReader } from "@tidewright/protocol";
import type { Dimension } from "@tidewright/units";
import { type Language, languages } from "@tidewright/words";
import { speak } from "../words/useWords.ts";
import { createStore, useStore } from "./store.ts";

/** Which units numbers are shown in, before any choice of one's own. */
export type UnitSystem = "metric" | "us" | "imperial";
/** Paper, graphite, or as the machine is set. */
export type Theme = "system" | "light" | "dark";

/** Choices that outlive the page. `own` names a unit for single dimensions and counts before the system. */
export interface Settings {
  readonly system: UnitSystem;
  readonly own: Readonly<Partial<Record<Dimension, string>>>;
  readonly theme: Theme;
  /** What the page speaks, and how it writes numbers. */
  readonly language: Language;
  /** Dimension lines on the drawing. */
  readonly dimensions: boolean;
  /** The tank from the side, from above, or both. */
  readonly views: "side" | "top" | "both";
}

const key = "tidewright.settings";
const fallback: Settings = {
  system: "metric",
  own: {},
  theme: "system",
  language: browserLanguage(),
  dimensions: true,
  views: "side",
};

/** The first of the reader's languages that the page can speak; English where it knows none of them. */
function browserLanguage(): Language {
  const wished = typeof navigator === "undefined" ? [] : (navigator.languages ?? [navigator.language]);
  const short = wished.map((tag) => tag.slice(0, 2).toLowerCase());
  return short.flatMap((tag) => languages.find((language) => language === tag) ?? [])[0] ?? "en";
}

function remembered(): Settings {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? "null");
    if (typeof kept !== "object" || kept === null) return fallback;
    return { ...fallback, ...kept };
  } catch {
    // Storage may be closed to us or hold something else: the bench works without it.
    return fallback;
  }
}

const store = createStore<Settings>(remembered());

/** Returns one part of the settings and renders again when it changes. */
export function useSettings<Part>(select: (settings: Settings) => Part): Part {
  return useStore(store, select);
}

/** Changes settings, keeps them for the next visit, and turns the page to the theme. */
export function changeSettings(change: Partial<Settings>): void {
  store.patch(change);
  applyTheme();
  if (change.language !== undefined) void speak(change.language);
  tellServer();
  try {
    localStorage.setItem(key, JSON.stringify(store.get()));
  } catch {
    // As above: a full or closed storage is no reason to refuse a unit.
  }
}

/** Lets the server know how the reader wants to be spoken to, so that the first picture of the next page is right at once. */
function tellServer(): void {
  const { language, system, own } = store.get();
  // biome-ignore lint/suspicious/noDocumentCookie: the one that writes without waiting is not in every browser
  document.cookie = `${readerCookie}=${writeReader({ language, system, own })}; Path=/; Max-Age=31536000; SameSite=Strict`;
}

/** Turns the page to the chosen theme. */
export function applyTheme(): void {
  const { theme } = store.get();
  if (theme === "system") delete document.documentElement.dataset["theme"];
  else document.documentElement.dataset["theme"] = theme;
}

/** Turns the page to the chosen language; done once its texts are there, so that no page begins in the wrong one. */
export function applyLanguage(): Promise<void> {
  tellServer();
  return speak(store.get().language);
}
