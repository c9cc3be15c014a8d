import { demoCatalogue } from "@tidewright/catalogue";
import { checkDesign, type Design, endDrag, type History, record, startHistory, undo } from "@tidewright/design";
import { type Camera, cameraView } from "../elevation/camera.ts";
import { layoutElevation } from "../elevation/layoutElevation.ts";
import { pointAlong, polylineLength } from "../elevation/polyline.ts";
import type { Point } from "../elevation/scene.ts";
import { shownHandles } from "../elevation/shownHandles.ts";
import { fitView } from "../elevation/view.ts";
import { idle, type SheetContext, type SheetEffect, type SheetEvent, type SheetState } from "./sheet.ts";
import { step } from "./step.ts";

/** A sheet without a page: it does what the page does with the effects, so that recorded gestures can be played on it. */
export class TestSheet {
  history: History<Design>;
  state: SheetState = idle;
  selection: string | undefined;
  camera: Camera | undefined;
  readonly effects: SheetEffect[] = [];
  #time = 0;

  constructor(design: Design) {
    this.history = startHistory(design);
  }

  get design(): Design {
    return this.history.present;
  }

  get context(): SheetContext {
    const scene = layoutElevation(this.design, undefined);
    const whole = fitView(scene.bounds, { width: 1200, height: 800 });
    const view = cameraView(whole, this.camera);
    return {
      design: this.design,
      scene,
      view,
      whole,
      handles: shownHandles(scene, view, this.selection),
      selection: this.selection,
    };
  }

  /** Plays one event, on the picture of now or on one that is late. */
  send(event: SheetEvent, late: Partial<SheetContext> = {}): void {
    const result = step(this.state, event, { ...this.context, ...late });
    this.state = result.state;
    for (const effect of result.effects) this.#do(effect);
  }

  #do(effect: SheetEffect): void {
    this.effects.push(effect);
    if (effect.kind === "select") this.selection = effect.path;
    else if (effect.kind === "look") this.camera = effect.camera;
    else if (effect.kind === "drop") {
      if (this.history.past.at(-1)?.key === effect.dragKey) this.history = { ...undo(this.history), future: [] };
    } else if (effect.kind === "edit") {
      const recorded = record(this.history, effect.edits, effect.label.key, effect.dragKey);
      if (recorded.problem !== undefined) throw new Error(`${effect.label.key}: ${recorded.problem.message}`);
      if (!checkDesign(recorded.history.present, demoCatalogue).ok) return;
      this.history = effect.done ? endDrag(recorded.history) : recorded.history;
      if (effect.hold !== null) this.selection = effect.hold;
    }
  }

  /** Where a part stands on the sheet [px]. */
  spot(path: string): Point {
    const { scene, view } = this.context;
    const part = scene.parts.find((one) => one.path === path);
    if (part === undefined) throw new Error(`no part at ${path}`);
    return view.toScreen(part.anchor);
  }

  /** Where the middle of a part's drawn pipe is [px]. */
  pipe(path: string): Point {
    const { scene, view } = this.context;
    const pipe = scene.shapes.find((shape) => shape.kind === "pipe" && shape.path === path);
    if (pipe?.kind !== "pipe") throw new Error(`no pipe at ${path}`);
    return view.toScreen(pointAlong(pipe.points, polylineLength(pipe.points) / 2));
  }

  /** Far enough from the event before that two taps are no double tap [ms]. */
  #later(): number {
    this.#time += 500;
    return this.#time;
  }

  /** A stroke of the mouse through points, pressed at the first and lifted at the last. */
  stroke(...points: Point[]): void {
    const send = (kind: "down" | "move" | "up", point: Point) =>
      this.send({ kind, pointer: 1, device: "mouse", point, at: this.#later(), button: 0 });
    send("down", points[0]!);
    for (const point of points.slice(1)) send("move", point);
    send("up", points.at(-1)!);
  }

  /** A key with the focus on a part. */
  key(key: string, focus?: string, more: { readonly shift?: true; readonly alt?: true } = {}): void {
    const at = this.#later();
    this.send({ kind: "key", key, at, ...more, ...(focus === undefined ? {} : { focus }) });
    this.send({ kind: "keyUp", key, at, ...more, ...(focus === undefined ? {} : { focus }) });
  }

  /** The document after taking the last step back. */
  undone(): Design {
    return undo(this.history).present;
  }
}
