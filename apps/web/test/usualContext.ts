import type { BrowserContextOptions } from "playwright-core";

/** How tests open a page: at desk width, and without the moving marks of the water, which a machine without a graphics card
 *  paints at the cost of a whole core. */
export const usualContext = {
  viewport: { width: 1440, height: 900 },
  reducedMotion: "reduce",
} as const satisfies BrowserContextOptions;

/** With everything that moves, for tests and measurements of just that. */
export const moving = { reducedMotion: "no-preference" } as const satisfies BrowserContextOptions;
