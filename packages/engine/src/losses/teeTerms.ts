function withinUnit(share: number): number {
  return Math.min(1, Math.max(0, share));
}

/** As `dividingTeeLoss`, written to `out`: branch, run, and the slopes of both over the flow ratio [-]. */
export function dividingTeeTerms(flowRatio: number, areaRatioBranch: number, out: Float64Array): void {
  const y = withinUnit(flowRatio);
  const a = areaRatioBranch;
  const g = a > 2 / 3 ? 1 + 0.3 * y * y : 1;
  const gSlope = a > 2 / 3 ? 0.6 * y : 0;
  const h = (a > 4 / 9 ? 0.3 : 1) / (a * a);
  let m = 0.4;
  let mSlope = 0;
  if (a > 0.4) {
    const factor = y <= 0.5 ? 2 : 0.3;
    m = factor * (2 * y - 1);
    mSlope = 2 * factor;
  }
  out[0] = g * (1 + h * y * y);
  out[1] = m * y * y;
  out[2] = gSlope * (1 + h * y * y) + g * 2 * h * y;
  out[3] = mSlope * y * y + 2 * m * y;
}

/** As `combiningTeeLoss`, written to `out`: branch, run, and the slopes of both over the flow ratio [-]. */
export function combiningTeeTerms(flowRatio: number, areaRatioBranch: number, out: Float64Array): void {
  const y = withinUnit(flowRatio);
  const a = areaRatioBranch;
  const falling = 0.9 * (1 - y);
  const isFalling = a > 0.35 && falling > 0.55;
  const c = a <= 0.35 ? 1 : isFalling ? falling : 0.55;
  const inner = 1 + (y * y) / (a * a) - 2 * (1 - y) * (1 - y);
  const innerSlope = (2 * y) / (a * a) + 4 * (1 - y);
  out[0] = c * inner;
  out[1] = 1.55 * y - y * y;
  out[2] = c * innerSlope + (isFalling ? -0.9 * inner : 0);
  out[3] = 1.55 - 2 * y;
}
