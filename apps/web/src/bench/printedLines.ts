import type { Assessment } from "@tidewright/advice";
import { type Design, valueAt } from "@tidewright/design";
import type { Words } from "@tidewright/words";
import type { Field } from "../document/fields.ts";
import { fieldText } from "../document/fieldText.ts";
import { partForm } from "../document/partForm.ts";
import { type PartLine, partTree } from "../document/partTree.ts";
import type { ScreenFormat } from "../format/useFormat.ts";

/** One row of the printed list of parts. */
export interface PrintedLine {
  /** JSON Pointer of the part, or of the run that a heading stands over. */
  readonly path: string;
  readonly title: string;
  /** How far it is set in: 0 for a section, one more for each thing that it lies in. */
  readonly level: number;
  /** A heading names the branch, the side of the pump or the section that the rows below it belong to. */
  readonly heads: boolean;
  /** What has to be known to build it, each with its name; the name is empty where the value says it all. */
  readonly built: readonly { readonly label: string; readonly value: string }[];
  readonly flow: string;
  readonly headLost: string;
}

/** Returns the rows of the printed list of parts, in the order of the flow: every part below the section and the branch that it
 *  lies in, with what was typed for it and what the solved system says of it.
 *  design   assessment undefined before the first answer   words and format of the reader   -> rows from top to bottom
 *  Findings: none. Throws: never.
 *  Source: own construction.
 *  Example: a tee into two branches as the third part of a loop's run  ->  the tee on level 1, "Branch 1, straight on" on 2, the
 *  parts of that branch on 3, "Branch 2" on 2 */
export function printedLines(
  design: Design,
  assessment: Assessment | undefined,
  words: Words,
  format: ScreenFormat,
): readonly PrintedLine[] {
  const flows = flowsOf(assessment);
  const losses = new Map(assessment?.parts.map(({ path, headLoss }) => [path, headLoss]));
  return partTree(design)
    .filter(({ path }) => path !== "")
    .flatMap((line) => {
      const { path, title } = line;
      const level = levelOf(design, line);
      const flow = flows.get(path);
      const loss = losses.get(path);
      const row: PrintedLine = {
        path,
        title,
        level,
        heads: false,
        built: builtAs(design, assessment, line, words, format),
        flow: flow === undefined ? "" : format(flow, "flow"),
        headLost: loss === undefined ? "" : format(loss, "head"),
      };
      const over = headingOver(design, path);
      return over === undefined
        ? [row]
        : [{ ...over, level: level - 1, heads: true, built: [], flow: "", headLost: "" }, row];
    });
}

const branches = /\/branches\/\d+/g;

/** The tree counts a tee's branch as one step; on paper the branch has a row of its own above its parts. */
function levelOf(design: Design, { path, depth }: PartLine): number {
  const sides = /^\/loops\/(\d+)\/(suction|run)\//.exec(path);
  const ofSide = sides !== null && hasSuction(design, Number(sides[1]));
  return depth + (path.match(branches)?.length ?? 0) + (ofSide || path.startsWith("/tankPumps/") ? 1 : 0);
}

const hasSuction = (design: Design, loop: number): boolean => (design.loops[loop]?.suction ?? []).length > 0;

/** The heading above a part that is the first of its branch, of its side of a pump, or of the pumps in the display. */
function headingOver(design: Design, path: string): { readonly path: string; readonly title: string } | undefined {
  if (!path.endsWith("/0")) return undefined;
  const list = path.slice(0, -2);
  const loop = /^\/loops\/(\d+)\/(suction|run)$/.exec(list);
  const headed =
    /\/branches\/\d+$/.test(list) || list === "/tankPumps" || (loop && hasSuction(design, Number(loop[1])));
  if (!headed) return undefined;
  const owner = list.replace(/\/branches\/\d+$|\/(suction|run)$/, "");
  const title = partForm(design, owner)?.lists.find((one) => one.path === list)?.label;
  return title === undefined ? undefined : { path: list, title };
}

function builtAs(
  design: Design,
  assessment: Assessment | undefined,
  { path, title }: PartLine,
  words: Words,
  format: ScreenFormat,
): PrintedLine["built"] {
  const found = foundOpening(design, assessment, path);
  const fields = (partForm(design, path)?.fields ?? []).flatMap((field) => {
    if (field.key === "opening" && found !== undefined)
      return [{ label: words.say("bench.readings.valveFound"), value: words.say("bench.readings.open", found) }];
    const value = valueAt(design, `${path}/${field.key}`);
    // A pump without a speed runs at its full one, and whoever wires it wants to know.
    const text = fieldText(field, value ?? (isSpeed(field) ? 1 : undefined), words);
    if (text === undefined || text === "" || text === "–") return [];
    return besideTitle(field, text, title);
  });
  const pump = assessment?.pumps.find((state) => state.path === path);
  return pump === undefined
    ? fields
    : [...fields, { label: "", value: words.say("bench.figure.against", { head: format(pump.head, "head") }) }];

  function foundOpening(of: Design, from: Assessment | undefined, valve: string) {
    const [, drain, place] = /^\/drains\/(\d+)\/run\/(\d+)$/.exec(valve) ?? [];
    const state = from?.drains.find((one) => one.path === `/drains/${drain}`);
    if (state?.valveSolved !== true || state.valveOpening === undefined) return undefined;
    // The first valve of the line is the one that is set for the share.
    const first = of.drains[Number(drain)]?.run.findIndex(({ kind }) => kind === "valve");
    return first === Number(place) ? { share: format.perCent(state.valveOpening) } : undefined;
  }
}

const isSpeed = ({ key, kind }: Field): boolean => key === "speed" && kind === "share";

/** What the title says already is not said again: "40 mm PN 16" needs no size, and of "UV unit, maker" the maker remains. */
function besideTitle({ kind, key, label }: Field, text: string, title: string): PrintedLine["built"] {
  if (key === "name" || key === "count") return [];
  if (kind === "choice" && title.includes(text)) return [];
  if (kind === "choice" && text.startsWith(`${title}, `)) return [{ label: "", value: text.slice(title.length + 2) }];
  return [{ label: kind === "check" ? "" : label, value: kind === "check" ? label : text }];
}

function flowsOf(assessment: Assessment | undefined): ReadonlyMap<string, number> {
  if (assessment === undefined) return new Map();
  const { parts, pumps, drains, loops, tankPumps } = assessment;
  return new Map([...parts, ...pumps, ...drains, ...loops, ...tankPumps].map(({ path, flow }) => [path, flow]));
}
