import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { bareTexts } from "./bareText.ts";
import { filesUnder, repositoryRoot } from "./repository.ts";

const texts = (source: string) => bareTexts("page.tsx", source).map(({ text }) => text);

describe("texts of the screens", () => {
  it("come from the message catalogue", () => {
    const sources = filesUnder(join(repositoryRoot, "apps/web/src"))
      .map((path) => `apps/web/src/${path.replaceAll("\\", "/")}`)
      .filter((path) => /(?<!\.test)\.tsx?$/.test(path));
    expect(sources.length).toBeGreaterThan(50);
    const bare = sources.flatMap((path) =>
      bareTexts(path, readFileSync(join(repositoryRoot, path), "utf8")).map(
        ({ line, text }) => `${path}:${line} ${text}`,
      ),
    );
    expect(bare).toEqual([]);
  });

  it.each([
    ["<p>Solving the system</p>", "Solving the system"],
    ["<p>{known ? say(key) : 'not given'}</p>", "not given"],
    ["<p>{`$" + "{count} tried`}</p>", "… tried"],
    ['<button aria-label="Close" />', "Close"],
    ["<input placeholder={optional ? 'not given' : undefined} />", "not given"],
    ["<img alt={name ?? 'a photo'} />", "a photo"],
    ["const row = { label: 'Return flow' };", "Return flow"],
  ])("are found bare in %s", (source, text) => {
    expect(texts(source)).toEqual([text]);
  });

  it.each([
    '<p>{say("bench.answer.solving")}</p>',
    '<p className="quiet">{value} %</p>',
    "<p>{pump.label}: {format(flow, 'flow')}</p>",
    '<button aria-label={say("bench.close")} type="button">×</button>',
    "const row = { label: 'bench.effect.returnFlow' };",
    "<code>tidewright-server backup</code>",
    "// <p>a comment</p>",
  ])("are not seen in %s", (source) => {
    expect(texts(source)).toEqual([]);
  });
});
