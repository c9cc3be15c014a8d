import type { Design } from "@tidewright/design";
import { actionsFor, arcGeometry, type Handle, type PlacedLabel, type Point, type View } from "@tidewright/editor";
import { type ReactNode, useLayoutEffect, useRef } from "react";
import { useWords } from "../words/useWords.ts";
import type { Sheet } from "./useSheet.ts";

interface Props {
  readonly design: Design;
  readonly path: string;
  readonly name: string;
  readonly label: PlacedLabel | undefined;
  readonly anchor: Point;
  /** What may be taken hold of at the part, which the bar leaves free. */
  readonly handle: Handle | undefined;
  readonly view: View;
  readonly sheet: Sheet;
}

/** What can be done with the part in hand, at the part; on a phone it lies at the foot of the drawing. */
export function ContextBar({ design, path, name, label, anchor, handle, view, sheet }: Props): ReactNode {
  const { say } = useWords();
  const bar = useRef<HTMLDivElement>(null);
  const actions = actionsFor(design, path);
  // A low drawing has no room to spare beside its parts.
  const narrow = view.width < 560 || view.height < 420;
  useLayoutEffect(() => {
    const element = bar.current;
    if (element === null || narrow) return;
    const { offsetWidth: width, offsetHeight: height } = element;
    const rect = label?.rect ?? { x: anchor.x - 10, y: anchor.y - 14, width: 20, height: 28 };
    const below = rect.y + rect.height + 6;
    const bottom = view.height - view.foot - 8;
    const x = Math.max(10, Math.min(rect.x, view.width - width - 10));
    // Below the label where there is room, else above it or beside the part; never over the part or what it is moved by.
    const free = [{ ...anchor, r: 14 }];
    if (handle !== undefined)
      free.push({ ...view.toScreen(handle.at), r: handle.axis === "arc" ? arcGeometry(view.scale).radius + 14 : 24 });
    const fits = (y: number) =>
      y > 48 &&
      y + height < bottom &&
      free.every(
        (one) => one.x < x - one.r || one.x > x + width + one.r || one.y < y - one.r || one.y > y + height + one.r,
      );
    const places = [
      below,
      rect.y - height - 6,
      anchor.y + 40,
      anchor.y - height - 40,
      anchor.y + 64,
      anchor.y - height - 64,
    ];
    const y = places.find(fits) ?? bottom - height;
    element.style.transform = `translate(${Math.round(x)}px, ${Math.round(y)}px)`;
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
