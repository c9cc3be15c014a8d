import { textWidth } from "@tidewright/editor";

/** Returns a measure of texts as the page draws them in an element, or the estimate where the page cannot tell.
 *  element whose type counts   -> measure: text and size of type [px] to width [px]
 *  Findings: none. Throws: never.
 *  Valid: a page with a canvas; each text is measured once.
 *  Source: CanvasRenderingContext2D.measureText, HTML Living Standard. */
export function measureText(element: Element): (text: string, size: number) => number {
  const pen = document.createElement("canvas").getContext("2d");
  if (!pen) return textWidth;
  const style = getComputedStyle(element);
  const family = style.getPropertyValue("--font-figures") || style.fontFamily;
  pen.font = `500 100px ${family}`;
  const known = new Map<string, number>();
  return (text, size) => {
    let wide = known.get(text);
    if (wide === undefined) {
      if (known.size > 2000) known.clear();
      wide = pen.measureText(text).width / 100;
      known.set(text, wide);
    }
    return wide * size;
  };
}
