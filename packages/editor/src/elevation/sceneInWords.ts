import { sayAgain, type Words } from "@tidewright/words";
import type { Figure, Scene, ScenePart, Shape } from "./scene.ts";

/** Returns a scene with what is written on it in the reader's language; names that people gave stay as they are.
 *  scene of `layoutElevation`   words of the reader's language   -> scene; the same one in English
 *  Findings: none. Throws: never.
 *  Valid: any scene.
 *  Source: own construction. */
export function sceneInWords(scene: Scene, words: Words): Scene {
  if (words.language === "en") return scene;
  const say = (text: string) => sayAgain(text, words, "elevation");
  const figure = (one: Figure): Figure => ({
    ...one,
    ...(one.before === undefined ? {} : { before: say(one.before) }),
    ...(one.after === undefined ? {} : { after: say(one.after) }),
  });
  const part = (one: ScenePart): ScenePart => ({
    ...one,
    name: say(one.name),
    figures: one.figures.map(figure),
    ...(one.state === undefined ? {} : { state: one.state.split(", ").map(say).join(", ") }),
    ...(one.handle === undefined ? {} : { handle: { ...one.handle, label: say(one.handle.label) } }),
    ...(one.grips === undefined ? {} : { grips: one.grips.map((grip) => ({ ...grip, label: say(grip.label) })) }),
  });
  const shape = (one: Shape): Shape => (one.kind === "box" ? { ...one, text: say(one.text) } : one);
  return {
    ...scene,
    shapes: scene.shapes.map(shape),
    parts: scene.parts.map(part),
    summary: scene.summary.map(figure),
  };
}
