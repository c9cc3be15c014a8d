import type { Design, Edit } from "@tidewright/design";
import { inserted } from "./cells.ts";

/** The parts of a run as far as the trial looks into them. */
interface AnyPart {
  readonly kind: string;
  readonly note?: string | undefined;
  readonly length?: { readonly value: number; readonly unit: string };
}

const oneOf = <Item>(items: readonly Item[]): Item => items[Math.floor(Math.random() * items.length)]!;

/** Returns a random edit whose value no other edit of the trial has; what it brings can be found again by it.
 *  design on the table   mark a whole number that no other edit has   -> one edit */
export function trialEdit(design: Design, mark: number): Edit {
  return oneOf([wholeDocument, length, note, note, opening, speed, wish, putIn, putIn, takeOut])(design, mark);
}

/** Places that everybody meets at: where editors are soon at odds. */
function wholeDocument(_design: Design, mark: number): Edit {
  return oneOf<Edit>([
    { op: "set", path: "/name", value: `Reef ${mark}` },
    { op: "set", path: "/notes", value: `As told on the telephone, ${mark}` },
    { op: "set", path: "/display/standHeight", value: { value: 850 + mark / 1000, unit: "mm" } },
  ]);
}

const runPaths = ["/drains/0/run", "/drains/1/run", "/drains/2/run", "/loops/0/run"] as const;

function run(design: Design): { readonly path: string; readonly parts: readonly AnyPart[] } {
  const path = oneOf(runPaths);
  const [, list, place] = path.split("/") as [string, "drains" | "loops", string];
  return { path, parts: (design[list]?.[Number(place)]?.run ?? []) as readonly AnyPart[] };
}

function pipe(design: Design): { readonly path: string; readonly part: AnyPart } {
  const { path, parts } = run(design);
  const places = parts.flatMap(({ kind }, place) => (kind === "pipe" ? [place] : []));
  const place = oneOf(places);
  return { path: `${path}/${place}`, part: parts[place]! };
}

function length(design: Design, mark: number): Edit {
  const { path, part } = pipe(design);
  const { value, unit } = part.length!;
  // Whole millimetres stay what they were, so that the run keeps fitting its rise.
  return { op: "set", path: `${path}/length`, value: { value: Math.floor(value) + (mark % 100_000) / 100_000, unit } };
}

function note(design: Design, mark: number): Edit {
  return { op: "set", path: `${pipe(design).path}/note`, value: `measured ${mark}` };
}

function opening(design: Design, mark: number): Edit {
  const parts = (design.loops?.[0]?.run ?? []) as readonly AnyPart[];
  const tee = parts.findIndex(({ kind }) => kind === "tee");
  // The branches to the devices begin with a valve.
  const path = `/loops/0/run/${tee}/branches/${oneOf([1, 2, 3])}/0/opening`;
  return { op: "set", path, value: 0.2 + mark / 1_000_000 };
}

function speed(_design: Design, mark: number): Edit {
  return { op: "set", path: oneOf(["/tankPumps/0/speed", "/tankPumps/1/speed"]), value: 0.5 + mark / 1_000_000 };
}

function wish(_design: Design, mark: number): Edit {
  return oneOf<Edit>([
    { op: "set", path: "/wishes/budget", value: { value: 1600 + mark / 100, unit: "EUR" } },
    { op: "set", path: "/topOff/reservoir", value: { value: 20 + mark / 10_000, unit: "L" } },
    { op: "set", path: "/power/circuits/0/otherLoad", value: { value: 300 + mark / 100, unit: "W" } },
  ]);
}

function putIn(design: Design, mark: number): Edit {
  if (Math.random() < 0.3)
    return {
      op: "insert",
      path: "/power/circuits/-",
      value: { name: `circuit ${mark}`, rating: { value: 10, unit: "A" } },
    };
  const { path, parts } = run(design);
  // Behind the first part and before the last, which ends the run.
  const place = 1 + Math.floor(Math.random() * (parts.length - 2));
  return {
    op: "insert",
    path: `${path}/${place}`,
    value: { kind: "fitting", fitting: "union", note: `${inserted}${mark}` },
  };
}

/** Takes out what anybody of the trial has put in, once there is much of it. */
function takeOut(design: Design, mark: number): Edit {
  const { path, parts } = run(design);
  const places = parts.flatMap((part, place) => (part.note?.startsWith(inserted) ? [place] : []));
  return places.length < 4 ? note(design, mark) : { op: "remove", path: `${path}/${oneOf(places)}` };
}
