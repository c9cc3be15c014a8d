import type { Design } from "@tidewright/design";
import {
  actionsFor,
  heldRects,
  obstaclesOf,
  type PlacedLabel,
  type Point,
  placeBar,
  type Scene,
  type View,
} from "@tidewright/editor";
import { type ReactNode, useLayoutEffect, useRef } from "react";
import { useWords } from "../words/useWords.ts";
import type { Sheet } from "./useSheet.ts";

interface Props {
  readonly design: Design;
  readonly path: string;
  readonly name: string;
  readonly scene: Scene;
  readonly labels: readonly PlacedLabel[];
  readonly anchor: Point;
  readonly view: View;
  readonly sheet: Sheet;
}

/** What can be done with the part in hand, at the part; on a phone it lies at the foot of the drawing. */
export function ContextBar({ design, path, name, scene, labels, anchor, view, sheet }: Props): ReactNode {
  const { say } = useWords();
  const bar = useRef<HTMLDivElement>(null);
  const actions = actionsFor(design, path);
  // A low drawing has no room to spare beside its parts.
  const narrow = view.width < 560 || view.height < 420;
  useLayoutEffect(() => {
    const element = bar.current;
    if (element === null || narrow) return;
    const { offsetWidth: width, offsetHeight: height } = element;
    const own = labels.find((label) => label.path === path)?.rect;
    const { x, y } = placeBar({
      view,
      width,
      height,
      keep: [...heldRects(scene, view, path), ...(own ? [own] : [])],
      spare: [
        ...labels.flatMap((label) => (label.path === path ? [] : [label.rect])),
        // What is drawn is worth seeing too while one part of it is in hand.
        ...obstaclesOf(scene, view),
      ],
      at: own ?? { ...anchor, width: 1, height: 1 },
    });
    element.style.transform = `translate(${x}px, ${y}px)`;
  });
  if (actions.length === 0) return null;
  return (
    <div
      ref={bar}
      className={narrow ? "tw-bar tw-barFoot" : "tw-bar"}
      style={narrow ? { height: view.foot - 5 } : undefined}
      role="toolbar"
      aria-label={say("drawing.bar.name", { part: name })}
    >
      {actions.map(({ action, name: text, key }) => (
        <button
          key={action}
          type="button"
          data-act={action}
          title={key === undefined ? undefined : `${say(text)} (${key})`}
          onClick={() => sheet.send({ kind: "act", action, path })}
        >
          {say(text)}
        </button>
      ))}
    </div>
  );
}
