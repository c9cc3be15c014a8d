import type { Design } from "@tidewright/design";

// When each document that still waits for its numbers was made; kept weakly, since a drag drops most of them.
const started = new WeakMap<Design, number>();
let measures = 0;
const mostMeasures = 600;

/** Notes when the edit began that led to this document. */
export function markEdit(design: Design, at: number): void {
  started.set(design, at);
}

/** Measures the edit that led to this document, called when its numbers stand in the page: "edit-to-numbers" up to now,
 *  "edit-to-paint" up to the first task after the frame in which they are painted. Read with
 *  `performance.getEntriesByName("edit-to-paint")`; the oldest are forgotten. */
export function markShown(design: Design): void {
  const start = started.get(design);
  if (start === undefined) return;
  started.delete(design);
  if (measures > mostMeasures) {
    performance.clearMeasures("edit-to-numbers");
    performance.clearMeasures("edit-to-paint");
    measures = 0;
  }
  measures += 1;
  performance.measure("edit-to-numbers", { start, end: performance.now() });
  requestAnimationFrame(() => {
    // A message posted from a frame callback is heard right after that frame has been painted.
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      performance.measure("edit-to-paint", { start, end: performance.now() });
      port1.close();
    };
    port2.postMessage(undefined);
  });
}
