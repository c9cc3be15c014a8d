import { type ReactNode, useEffect, useRef, useState } from "react";
import "./plan.css";
import { changeSettings, useSettings } from "../state/settings.ts";
import { useWords } from "../words/useWords.ts";

/** Which sides of the tank are drawn. */
const drawnSides = ["side", "top", "both"] as const;

/** Beside each other both drawings need this much [px]; else they stand one over the other. */
const roomForBoth = 900;
/** The switch takes this much of the height [px]. */
const switchHeight = 48;
/** Share of the room that the elevation keeps where both are drawn. */
const sideShare = 0.6;

interface DrawingViewsProps {
  /** Height for everything [px]. */
  readonly height: number;
  readonly side: (height: number) => ReactNode;
  readonly top: (width: number, height: number) => ReactNode;
}

/** The elevation, the plan, or both, with the switch between them. */
export function DrawingViews({ height, side, top }: DrawingViewsProps) {
  const views = useSettings((settings) => settings.views);
  const { say } = useWords();
  const frame = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const room = height - switchHeight;
  const beside = views === "both" && width >= roomForBoth;
  const planWidth = beside ? Math.floor(width * (1 - sideShare)) : width;
  const stacked = views === "both" && !beside;
  return (
    <div ref={frame} className="drawing-views">
      <fieldset className="view-switch">
        <legend className="visually-hidden">{say("plan.views")}</legend>
        {drawnSides.map((one) => (
          <label key={one} className="view-choice" data-on={views === one ? "" : undefined}>
            <input
              type="radio"
              name="drawn-sides"
              value={one}
              checked={views === one}
              onChange={() => changeSettings({ views: one })}
            />
            {say(`plan.${one}`)}
          </label>
        ))}
      </fieldset>
      <div className={beside ? "views-beside" : "views-stacked"}>
        {views === "top" ? null : (
          <div className="view-side">{side(stacked ? Math.floor(room * sideShare) : room)}</div>
        )}
        {views === "side" || width === 0 ? null : (
          <div className="view-top">{top(planWidth, stacked ? Math.floor(room * (1 - sideShare)) : room)}</div>
        )}
      </div>
    </div>
  );
}
