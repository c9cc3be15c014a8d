import { readDesign, readJson } from "@tidewright/design";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";
import { openScenario } from "../film/openScenario.ts";
import { isScenarioDocument } from "../film/ownScenarios.ts";
import { markSaved, openDesign, presentDesign, show } from "../state/bench.ts";
import { words } from "../words/useWords.ts";

/** Reads a file chosen or dropped; a sound design is opened and a scenario played, else all problems are shown and the present
 *  design stays. */
export async function openFile(file: File): Promise<void> {
  const text = await file.text();
  const json = readJson(text);
  if (json.ok && isScenarioDocument(json.value)) {
    openScenario(file.name, json.value);
    return;
  }
  const reading = readDesign(text, currentCatalogue());
  if (!reading.ok) {
    show({ refused: { name: file.name, problems: reading.problems }, dialog: "problems" });
    return;
  }
  const { name } = reading.design;
  const { say } = words();
  openDesign(
    reading.design,
    reading.migratedFrom === undefined
      ? say("keeping.bar.opened", { name })
      : say("keeping.bar.openedFrom", { name, version: reading.migratedFrom }),
  );
}

/** Asks for a file with the browser's own window and opens it. */
export function chooseFile(): void {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = ".json,application/json";
  input.onchange = () => {
    const file = input.files?.[0];
    if (file) void openFile(file);
  };
  input.click();
}

/** Hands the document out as a file, in the units it was typed in. */
export function saveFile(): void {
  const design = presentDesign();
  saveJson(design, design.name);
  markSaved();
}

/** Hands anything out as a JSON file under a name of its own. */
export function saveJson(value: unknown, name: string): void {
  const blob = new Blob([`${JSON.stringify(value, null, 2)}\n`], { type: "application/json" });
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = `${fileName(name)}.json`;
  link.click();
  // The download has its own hold on the data once it has started.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

function fileName(name: string): string {
  const plain = name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "");
  return plain || "design";
}
