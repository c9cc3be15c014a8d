import { type FlowLine, flowMarks, type Rect, type View } from "@tidewright/editor";
import { type ReactNode, useEffect, useRef } from "react";

interface Props {
  readonly lines: readonly FlowLine[];
  readonly view: View;
  /** Areas that marks do not run over, such as labels [px]. */
  readonly keepOut: readonly Rect[];
}

/** Least time between two pictures [ms]: thirty a second are smooth enough for what moves this slowly. */
const pause = 30;
/** Least distance between two marks [px]. */
const closest = 15;

/** The water's movement as marks that run along the pipes, on a canvas of their own so that nothing else is drawn anew. The
 *  browser itself pauses it while the page is hidden. */
export function FlowCanvas({ lines, view, keepOut }: Props): ReactNode {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const element = canvas.current;
    const pen = element?.getContext("2d");
    if (!element || !pen) return;
    const sharp = Math.min(2, window.devicePixelRatio || 1);
    element.width = Math.round(view.width * sharp);
    element.height = Math.round((view.height - view.foot) * sharp);
    const ink = getComputedStyle(element).color;
    let frame = 0;
    let last = 0;
    const draw = (now: number) => {
      frame = requestAnimationFrame(draw);
      if (now - last < pause) return;
      last = now;
      pen.setTransform(sharp, 0, 0, sharp, 0, 0);
      pen.clearRect(0, 0, view.width, view.height);
      pen.strokeStyle = ink;
      pen.lineCap = "round";
      for (const line of lines)
        for (const mark of flowMarks(line, now / 1000, closest / view.scale)) {
          const { x, y } = view.toScreen(mark);
          if (x < 0 || y < 0 || x > view.width || y > view.height || keepOut.some((rect) => inside(rect, x, y)))
            continue;
          const wide = Math.max(2, mark.bore * view.scale);
          const half = Math.min(9, Math.max(2, wide * 0.28));
          pen.lineWidth = Math.min(3, Math.max(1.3, wide * 0.16));
          const [dx, dy] = [Math.cos(mark.angle) * half, -Math.sin(mark.angle) * half];
          pen.beginPath();
          pen.moveTo(x - dx, y - dy);
          pen.lineTo(x + dx, y + dy);
          pen.stroke();
        }
    };
    frame = requestAnimationFrame(draw);
    return () => cancelAnimationFrame(frame);
  }, [lines, view, keepOut]);
  return (
    <canvas
      ref={canvas}
      className="tw-flow"
      style={{ width: view.width, height: view.height - view.foot }}
      aria-hidden="true"
      data-lines={lines.length}
    />
  );
}

const inside = ({ x, y, width, height }: Rect, px: number, py: number): boolean =>
  px > x && px < x + width && py > y && py < y + height;
