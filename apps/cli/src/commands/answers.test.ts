import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { example, runCli } from "../testing/runCli.ts";

describe("assess", () => {
  it("ends with 1 where a finding is a danger, and names each by its code", () => {
    const { code, stdout, stderr } = runCli(["assess", example("first-tank-110.json")]);
    const answer = JSON.parse(runCli(["assess", example("first-tank-110.json"), "--json"]).stdout);
    expect(code).toBe(1);
    expect(stderr).toBe("");
    for (const finding of answer.findings) expect(stdout).toContain(`${finding.code} at ${finding.at}`);
    expect(stdout).toContain("DANGER");
  });

  it("ends with 0 where nothing is a danger, and gives the answer in its first sentence", () => {
    const { code, stdout } = runCli(["assess", example("waiting-room-reef.json")]);
    expect(code).toBe(0);
    expect(stdout.split("\n\n")[1]).toMatch(
      /brings? .* over the weir .*display\s+volumes\s+an\s+hour, within the wish/,
    );
    for (const line of stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  it("answers several files in one list", () => {
    const files = [example("first-tank-110.json"), example("hotel-lobby.json")];
    const { code, stdout } = runCli(["assess", ...files, "--json"]);
    expect(code).toBe(1);
    expect(JSON.parse(stdout).map((each: { name: string }) => each.name)).toEqual([
      "First tank, 110 litres",
      "Hotel lobby",
    ]);
  });
});

describe("a job whose electricity is paid in another currency than its pumps", () => {
  const file = join(mkdtempSync(join(tmpdir(), "tidewright-")), "dollars.json");
  const design = JSON.parse(readFileSync(example("waiting-room-reef.json"), "utf8"));
  design.power.tariff = { value: 0.17, unit: "USD/kWh" };
  writeFileSync(file, JSON.stringify(design));
  afterAll(() => rmSync(dirname(file), { recursive: true }));

  it("is told both sums and that they are not added", () => {
    const { stdout } = runCli(["assess", file]);
    expect(stdout).toMatch(/price of all that is listed +1441\.00\sEUR/);
    expect(stdout).toMatch(/price and running cost over 5 years +not added: EUR and USD/);
    const levers = runCli(["levers", file]).stdout.replaceAll(/\s+/g, " ");
    expect(levers).toMatch(/running cost a year [\d.]+ USD to/);
    expect(levers).not.toMatch(/running cost a year [\d.]+ EUR/);
  });
});

describe("rank", () => {
  it("shows no more than asked for, and only single pumps where pairs are left out", () => {
    const { stdout } = runCli(["rank", example("hotel-lobby.json"), "--top", "2", "--no-pairs", "--json"]);
    const { candidates } = JSON.parse(stdout);
    expect(candidates).toHaveLength(2);
    expect(candidates.every((each: { arrangement: string }) => each.arrangement === "single")).toBe(true);
  });
});

describe("levers", () => {
  it("tell the one that helps most first, with what it cures by code", () => {
    const { code, stdout } = runCli(["levers", example("first-tank-110.json")]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^The one change that would help most: /);
    expect(stdout).toContain("cures drain/no-emergency at /drains");
  });
});

describe("catalogue and schema", () => {
  it("find nothing wrong with the demonstration catalogue", () => {
    const { code, stdout } = runCli(["catalogue", "check"]);
    expect(code).toBe(0);
    expect(stdout).toContain("72 pumps read; nothing is wrong");
  });

  it.each([
    ["design", "display"],
    ["network", "network"],
    ["scenario", "scenario"],
  ])("print the JSON Schema of a %s", (kind, section) => {
    const schema = JSON.parse(runCli(["schema", kind]).stdout);
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(schema.required).toContain(section);
  });
});
