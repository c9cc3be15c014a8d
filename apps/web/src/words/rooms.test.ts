import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { rooms } from "@tidewright/words";
import { describe, expect, it } from "vitest";

const source = resolve(import.meta.dirname, "..");
const text = new Map(
  readdirSync(source, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name) && !/\.test\.tsx?$/.test(name))
    .map((name) => [join(source, name), readFileSync(join(source, name), "utf8")] as const),
);
const pages = ["main.tsx", "share/main.tsx", "start/customer/main.tsx"].map((page) => join(source, page));

/** Files that one file brings along at once, types left out. */
const together = (file: string): string[] =>
  [...text.get(file)!.matchAll(/^(?:import|export)\s+(?!type\b)(?:[^"';]*?\sfrom\s+)?"(\.[^"]+)"/gm)]
    .map(([, path]) => resolve(dirname(file), path!))
    .filter((path) => text.has(path));

/** Files that one file fetches later, each with the rooms that are entered in the same breath. */
function later(file: string): { readonly file: string; readonly rooms: readonly string[] }[] {
  const written = text.get(file)!;
  return [...written.matchAll(/import\("(\.[^"]+)"\)(?:,\s*enter\(([^)]*)\))?/g)].map(([, path, entered = ""]) => ({
    file: resolve(dirname(file), path!),
    rooms: [...entered.matchAll(/"(\w+)"/g)].map(([, room]) => room!),
  }));
}

/** Rooms whose texts a file says by name. */
const said = (file: string): string[] =>
  rooms.filter((room) => new RegExp(`say\\([^()]*["\`]${room}\\.|["\`]${room}\\.[a-zA-Z]`).test(text.get(file)!));

/** Every file that says a room's text and may be reached where nobody has entered the room. */
function unheard(): string[] {
  const found = new Set<string>();
  const seen = new Set<string>();
  const visit = (file: string, entered: readonly string[]): void => {
    const name = `${file} ${[...entered].sort().join()}`;
    if (seen.has(name) || !text.has(file)) return;
    seen.add(name);
    for (const room of said(file)) if (!entered.includes(room)) found.add(`${relative(source, file)} says ${room}`);
    for (const next of together(file)) visit(next, entered);
    for (const next of later(file)) visit(next.file, [...entered, ...next.rooms]);
  };
  for (const page of pages) {
    const own = [...(text.get(page)!.match(/enter\(([^)]*)\)/)?.[1] ?? "").matchAll(/"(\w+)"/g)].map(
      ([, room]) => room!,
    );
    visit(page, own);
  }
  return [...found].sort();
}

describe("rooms", () => {
  it("are entered before any of their texts is said", () => {
    expect(unheard()).toEqual([]);
  });

  it("are found by this test at all", () => {
    const desk = join(source, "desk/Desk.tsx");
    expect(together(join(source, "share/main.tsx")).length).toBeGreaterThan(3);
    expect(later(join(source, "App.tsx")).find(({ file }) => file === desk)?.rooms).toContain("desk");
    expect([...text.keys()].some((file) => said(file).includes("desk"))).toBe(true);
  });
});
