import { type RefObject, useEffect, useState } from "react";
import { measureText } from "./measureText.ts";

/** The page's own type counts once its fonts are there. */
export function useMeasure(frame: RefObject<HTMLElement | null>) {
  const [measure, setMeasure] = useState<(text: string, size: number) => number>();
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    let here = true;
    void document.fonts.ready.then(() => {
      if (here) setMeasure(() => measureText(element));
    });
    return () => {
      here = false;
    };
  }, [frame]);
  return measure;
}

/** Width of an element [px], `initial` before it is measured. */
export function useWidth(frame: RefObject<HTMLElement | null>, initial: number): number {
  const [width, setWidth] = useState(initial);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [frame]);
  return width;
}
