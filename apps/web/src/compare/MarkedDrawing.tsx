import type { Extent } from "@tidewright/editor";
import { type RefObject, useEffect, useRef, useState } from "react";
import { FaultScreen } from "../bench/FaultScreen.tsx";
import { Elevation } from "../drawing/index.ts";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import type { ComparedSide } from "./useCompared.ts";

/** A mark on a part of the drawing: a box with a letter. */
export interface Mark {
  readonly path: string;
  readonly letter: string;
}

interface Props {
  readonly side: ComparedSide;
  readonly marks: readonly Mark[];
  /** What both drawings take, so that they stand in one scale on one floor [m]. */
  readonly room: Extent;
  /** Letter of the difference in hand. */
  readonly shown: string | undefined;
}

interface Placed extends Mark {
  readonly x: number;
  readonly y: number;
}

/** A drawing to look at, with boxes and letters on the parts that differ. */
export function MarkedDrawing({ side, marks, room, shown }: Props) {
  const format = useFormat();
  const { say } = useWords();
  const frame = useRef<HTMLDivElement>(null);
  const { placed, size } = usePlaces(frame, marks);
  return (
    <div className="compare-drawing" ref={frame}>
      <FaultScreen what={say("keeping.bar.theDrawing")} again={side.design}>
        <Elevation
          design={side.design}
          assessment={side.assessment}
          selection={undefined}
          room={room}
          format={format}
          initialWidth={420}
        />
      </FaultScreen>
      {/* On paper both pictures are scaled onto the page alike, so that a mark stays on its part. */}
      <svg
        className="compare-marks"
        viewBox={size === undefined ? undefined : `0 0 ${size.width} ${size.height}`}
        aria-hidden="true"
      >
        {placed.map(({ path, letter, x, y }) => (
          <g key={path} data-mark={letter} data-shown={letter === shown ? "" : undefined}>
            <rect x={x - 15} y={y - 15} width={30} height={30} rx={3} />
            <circle cx={x + 15} cy={y - 15} r={8.5} />
            <text x={x + 15} y={y - 11} textAnchor="middle">
              {letter}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}

interface Places {
  readonly placed: readonly Placed[];
  /** Of the frame in which they are; unknown before it is measured [px]. */
  readonly size: { readonly width: number; readonly height: number } | undefined;
}

/** Where the parts of the drawing are [px]: the drawing says so itself by the stops it has for the keyboard, and it moves
 *  under zoom and pan. */
function usePlaces(frame: RefObject<HTMLDivElement | null>, marks: readonly Mark[]): Places {
  const [places, setPlaces] = useState<Places>({ placed: [], size: undefined });
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    let asked = 0;
    const measure = () => {
      asked = 0;
      const origin = element.getBoundingClientRect();
      const placed = marks.flatMap((mark) => {
        const at = element.querySelector(`.tw-elevation [data-path="${CSS.escape(mark.path)}"] circle`);
        if (at === null) return [];
        const box = at.getBoundingClientRect();
        return [{ ...mark, x: box.x + box.width / 2 - origin.x, y: box.y + box.height / 2 - origin.y }];
      });
      const next = { placed, size: { width: origin.width, height: origin.height } };
      setPlaces((before) => (JSON.stringify(before) === JSON.stringify(next) ? before : next));
    };
    const ask = () => {
      if (asked === 0) asked = requestAnimationFrame(measure);
    };
    const sizes = new ResizeObserver(ask);
    sizes.observe(element);
    const changes = new MutationObserver((records) => {
      if (records.some(({ target }) => !(target as Element).closest?.(".compare-marks"))) ask();
    });
    changes.observe(element, { subtree: true, childList: true, attributes: true, attributeFilter: ["cx", "cy"] });
    ask();
    return () => {
      cancelAnimationFrame(asked);
      sizes.disconnect();
      changes.disconnect();
    };
  }, [frame, marks]);
  return places;
}
