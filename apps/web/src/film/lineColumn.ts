import type { PipeShape } from "@tidewright/editor";

/** How high water stands in a line, by the share of it that holds water, and back. */
export interface LineColumn {
  /** Elevation [m] up to which water stands; below all pipes at 0, above them at 1. */
  heightAt(share: number): number;
  /** Share of the line that lies below an elevation [m]. */
  shareAt(height: number): number;
}

/** Returns how high water stands in a line that holds a share of what fills it: it lies in the lowest pipes first.
 *  pipes of the line as drawn [m]   -> LineColumn
 *  Findings: none. Throws: never.
 *  Valid: any pipes; volumes are those of the drawing, where pipes are shorter than they are, so the height is a picture.
 *  Source: geometry.
 *  Example: lineColumn([{ kind: "pipe", path: "", bore: 0.1, water: "full", points: [{ x: 0, y: 0 }, { x: 0, y: 2 }] }]).heightAt(0.5)  ->  1 */
export function lineColumn(pipes: readonly PipeShape[]): LineColumn {
  const pieces = pipes.flatMap(({ points, bore }) =>
    points.slice(1).map((b, i) => {
      const a = points[i]!;
      const half = Math.abs(a.y - b.y) < bore / 2 ? bore / 2 : 0;
      return {
        low: Math.min(a.y, b.y) - half,
        high: Math.max(a.y, b.y) + half,
        volume: Math.hypot(b.x - a.x, b.y - a.y) * bore * bore,
      };
    }),
  );
  const all = pieces.reduce((sum, { volume }) => sum + volume, 0);
  if (!(all > 0)) return { heightAt: () => 0, shareAt: () => 0 };
  const heights = [...new Set(pieces.flatMap(({ low, high }) => [low, high]))].sort((a, b) => a - b);
  const volumeBelow = (height: number) =>
    pieces.reduce(
      (sum, { low, high, volume }) => sum + volume * Math.min(1, Math.max(0, (height - low) / (high - low))),
      0,
    );
  // Every piece spans a height above zero, so what lies below grows on straight lines between these heights.
  const below = heights.map(volumeBelow);
  const [bottom, top] = [heights[0]! - 0.01, heights.at(-1)! + 0.01];
  return {
    heightAt(share) {
      if (share >= 0.9995) return top;
      if (share <= 0.0005) return bottom;
      const wanted = share * all;
      const i = Math.max(
        1,
        below.findIndex((volume) => volume >= wanted),
      );
      const step = below[i]! - below[i - 1]!;
      return heights[i - 1]! + (heights[i]! - heights[i - 1]!) * (step > 0 ? (wanted - below[i - 1]!) / step : 1);
    },
    shareAt: (height) => volumeBelow(height) / all,
  };
}

/** Above the least share that a line comes to hold, this much more still counts as run empty: the surface it hangs in moves too. */
const slack = 0.06;

/** Returns the same column with its lowest share set to where it must stand: a line that has run empty holds water up to the
 *  surface of the vessel it hangs in, whatever its true lengths.
 *  column of the line as drawn   lowest least share that the line comes to hold
 *  -> elevation [m] by share and by the elevation of the surface [m]
 *  Findings: none. Throws: never.
 *  Valid: shares from `lowest` to 1; a line that never runs empty is left as it is.
 *  Source: own construction. */
export function restingColumn(column: LineColumn, lowest: number): (share: number, surface: number) => number {
  const empty = lowest + slack;
  if (empty >= 0.97) return column.heightAt;
  return (share, surface) => {
    const rest = column.shareAt(surface);
    if (rest >= 1 || share <= empty) return surface;
    return column.heightAt(rest + ((share - empty) / (1 - empty)) * (1 - rest));
  };
}
