import { makerKey } from "../../state/maker.ts";
import { presentMaker } from "../../state/session.ts";
import type { PumpForm } from "./pumpForm.ts";

/** A sheet as somebody left it without saving, and the version it was begun from. */
export interface SheetDraft {
  readonly form: PumpForm;
  readonly version: number;
}

const place = "tidewright.sheet.";
/** Each person at this device finds their own typing and not another's. */
const keyOf = (id: string): string => `${place}${makerKey(presentMaker())}.${id}`;

/** Where a new sheet waits: one that begins empty, and one for each pump that is copied. */
export const newDraft = (from: string | undefined): string => `+${from ?? ""}`;

/** Returns what was typed on a sheet and never saved, or undefined. */
export function readDraft(id: string): SheetDraft | undefined {
  try {
    const draft = JSON.parse(localStorage.getItem(keyOf(id)) ?? "null") as SheetDraft | null;
    return draft !== null && Array.isArray(draft.form?.curves) && typeof draft.version === "number" ? draft : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps a sheet on this device until it is saved; undefined lets it go. */
export function writeDraft(id: string, draft: SheetDraft | undefined): void {
  try {
    if (draft === undefined) localStorage.removeItem(keyOf(id));
    else localStorage.setItem(keyOf(id), JSON.stringify(draft));
  } catch {
    // A full or closed storage: the sheet lives as long as the page.
  }
}

/** Returns whose sheets wait on this device, by the pumps' short names. */
export function draftIds(): ReadonlySet<string> {
  try {
    const mine = keyOf("");
    return new Set(Object.keys(localStorage).flatMap((key) => (key.startsWith(mine) ? [key.slice(mine.length)] : [])));
  } catch {
    return new Set();
  }
}
