import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { example, runCli } from "../testing/runCli.ts";

const reef = example("waiting-room-reef.json");
const small = example("first-tank-110.json");
const scenario = (name: string) => example(`scenarios/${name}.json`);

describe("whatif with a scenario", () => {
  it("tells the verdict, every vessel, what happens when, and where the water went", () => {
    const { code, stdout, stderr } = runCli(["whatif", reef, "powerCut"]);
    expect([code, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(/^Waiting-room reef: Power cut\n\nThe floor stays dry/);
    for (const words of ["sump “return”", "the mains fail", "the end", "water on the floor"])
      expect(stdout).toContain(words);
    for (const line of stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  it("ends with 1 where the floor gets wet: the one drain of a tank is blocked while its pump runs on", () => {
    const { code, stdout } = runCli(["whatif", small, "drainBlocked:0", "--json"]);
    const answer = JSON.parse(stdout);
    expect(code).toBe(1);
    expect(answer.verdict).toBe("wet");
    expect(answer.spilled).toBeGreaterThan(0);
  });

  it("answers in SI with the film, and without where it is not wanted, the rest the same", () => {
    const { film, ...rest } = JSON.parse(runCli(["whatif", reef, "powerCut", "--json"]).stdout);
    const without = JSON.parse(runCli(["whatif", reef, "powerCut", "--json", "--no-film"]).stdout);
    expect(film.levels).toHaveLength(rest.vessels.length);
    expect(film.times).toHaveLength(film.levels[0].length);
    expect(without).toEqual(rest);
    expect(rest.reached).toBe(1800);
  });

  it("plays a scenario of one's own from a file or the standard input, at the times it gives", () => {
    const fromFile = JSON.parse(runCli(["whatif", reef, scenario("storm-night"), "--json", "--no-film"]).stdout);
    const text = readFileSync(new URL("../../../../examples/scenarios/storm-night.json", import.meta.url), "utf8");
    const { stdout } = runCli(["whatif", reef, "-", "--json", "--no-film"], text);
    expect(JSON.parse(stdout)).toEqual(fromFile);
    expect(fromFile.scenario).toMatchObject({ id: "own", kind: "own", subjects: ["Storm night"], duration: 5400 });
    const actions = fromFile.events.filter(({ code }: { code: string }) => code === "action");
    expect(actions.map(({ t }: { t: number }) => t)).toEqual([60, 1260, 1320, 3120]);
  });

  it("draws its levels into a file beside the answer", () => {
    const folder = mkdtempSync(join(tmpdir(), "tidewright-"));
    try {
      const plot = join(folder, "levels.svg");
      const { code, stdout } = runCli(["whatif", reef, "restart", "--plot", plot, "--units", "us"]);
      const svg = readFileSync(plot, "utf8");
      expect(code).toBe(0);
      expect(stdout).toContain("Restart after a power cut");
      expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg"/);
      expect(svg).toContain("\u202fin<");
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe("whatif without a scenario", () => {
  it("prints the safety table, what follows and the cautions, and ends with 1 where there is a danger", () => {
    const { code, stdout } = runCli(["whatif", small]);
    expect(code).toBe(1);
    const plain = stdout.replace(/\s+/g, " ");
    for (const words of [
      "What can happen, worst first",
      "highest safe operating depth in the return chamber",
      "smallest sump with this plan",
      "what the emergency drain must carry alone",
      "pull the plug",
      "DANGER",
    ])
      expect(plain).toContain(words);
    for (const line of stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  it("plays every scenario that --list names, for as many days as asked", () => {
    const listed = JSON.parse(runCli(["whatif", small, "--list", "--days", "3", "--json"]).stdout);
    const { rows, answers } = JSON.parse(runCli(["whatif", small, "--days", "3", "--json"]).stdout);
    const ids = (list: { id: string }[]) => list.map(({ id }) => id).sort();
    expect(ids(rows.map((row: { scenario: { id: string } }) => row.scenario))).toEqual(ids(listed));
    expect(answers.days).toBe(3);
    expect(listed.find(({ id }: { id: string }) => id === "topOffFails").duration).toBe(3 * 86_400);
    const text = runCli(["whatif", small, "--list"]).stdout;
    for (const id of ids(listed)) expect(text).toContain(id);
  });
});

describe("whatif refuses, with 2", () => {
  it.each<[string, string[], string, RegExp]>([
    ["an id that is not there", [reef, "drainBlocked:7"], "", /did you mean "drainBlocked:/],
    ["a file that is not there", [reef, "storm.json"], "", /there is no such file/],
    [
      "a scenario of another design, all its problems named",
      [reef, scenario("lobby-pump-service")],
      "",
      /\/scenario\/events\/1\/do\/pump\n[\s\S]*\/scenario\/events\/2\/do\/pump\n/,
    ],
    ["two documents from one stream", ["-", "-"], "", /not both/],
    ["a drawing of nothing", [reef, "--plot", "levels.svg"], "", /name the scenario/],
    ["a drawing in another form", [reef, "powerCut", "--plot", "levels.png"], "", /\.svg/],
    ["a folder that is not there", [reef, "powerCut", "--plot", "no/such/levels.svg"], "", /--plot/],
    ["days beyond reach", [reef, "--days", "61"], "", /whole number from 1 to 60/],
  ])("%s", (_what, args, input, message) => {
    const { code, stdout, stderr } = runCli(["whatif", ...args], input);
    expect(stderr).toMatch(message);
    expect([code, stdout]).toEqual([2, ""]);
  });
});
