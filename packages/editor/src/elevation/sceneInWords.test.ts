import { readFileSync } from "node:fs";
import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { readDesign } from "@tidewright/design";
import { englishWords, loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { layoutElevation } from "./layoutElevation.ts";
import { sceneInWords } from "./sceneInWords.ts";

const file = new URL("../../../../examples/waiting-room-reef.json", import.meta.url);
const reading = readDesign(readFileSync(file, "utf8"));
if (!reading.ok) throw new Error("the demo job does not read");
const scene = layoutElevation(reading.design, assess(reading.design, demoCatalogue));

describe("the side elevation in German", () => {
  it("says tanks, drains, levels and handles anew and keeps names that were given", async () => {
    const said = sceneInWords(scene, await loadWords("de"));
    const part = (path: string) => said.parts.find((each) => each.path === path)!;
    expect(part("/display").name).toBe("Schaubecken");
    expect(part("/drains/0").name).toBe("Ablauf siphon");
    expect(part("/drains/0").state).toBe("gedrosselter Siphon, läuft voll");
    expect(part("/drains/1").name).toBe("Ablauf open channel");
    expect(said.parts.map(({ name }) => name)).toContain("Kugelhahn, beidseitig verschraubt");
    expect(said.parts.map(({ name }) => name)).toContain("Auslauf in Technikbecken, drain");
    expect(part("/sump/chambers/2").name).toBe("Kammer return");
    expect(part("/sump/chambers/2").handle?.label).toBe("Betriebspegel");
    expect(part("/sump").figures.map(({ after }) => after)).toEqual(["Reserve", "zurück bei Stromausfall"]);
    expect(said.summary.map(({ before }) => before)).toContain("Umwälzung");
  });

  it("leaves no figure's words and no handle in English", async () => {
    const said = sceneInWords(scene, await loadWords("de"));
    const words = (one: typeof scene) => [
      ...[...one.summary, ...one.parts.flatMap(({ figures }) => figures)].flatMap(({ before, after }) => [
        before,
        after,
      ]),
      ...one.parts.flatMap(({ handle, state }) => [handle?.label, state]),
    ];
    const [english, german] = [words(scene), words(said)];
    expect(english.filter((text, i) => text !== undefined && text === german[i])).toEqual([]);
  });

  it("is the same scene in English", () => {
    expect(sceneInWords(scene, englishWords)).toBe(scene);
  });
});
