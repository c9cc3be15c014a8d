import { standardGravity } from "../water/index.ts";

/** Rows b/B, alpha, beta, k_b [m]; 0 is the limit of a notch far narrower than its channel. */
const coefficients = [
  [0, 0.587, -0.0023, 0.0024],
  [0.2, 0.589, -0.0018, 0.0024],
  [0.4, 0.591, 0.0058, 0.0027],
  [0.5, 0.592, 0.01, 0.003],
  [0.6, 0.593, 0.018, 0.0036],
  [0.7, 0.594, 0.03, 0.0041],
  [0.8, 0.596, 0.045, 0.0042],
  [0.9, 0.598, 0.064, 0.0036],
  [1, 0.602, 0.075, -0.0009],
] as const;

/** Returns the flow over a rectangular thin-plate weir, contracted or as wide as its channel:
 *  Q = Ce (2/3) sqrt(2 g) (b + kb) (h + 0.001)^1.5, Ce = alpha + beta h/p, all three read from a table by b/B.
 *  head h [m]   width b [m]   channelWidth B [m], b <= B   crestHeight p [m]   -> flow [m3/s]; 0 at or below the crest
 *  Findings: none. Throws: never.
 *  Valid: head above 0.03 m, h/p below 2, width above 0.15 m, crest above 0.1 m; about 1 % there. Table values between rows are
 *  linear; b/B is held within 0 and 1.
 *  Source: C. E. Kindsvater and R. W. Carter, Discharge characteristics of rectangular thin-plate weirs, J. Hydraul. Div. ASCE 83
 *  (1957), in ISO 1438:2017; alpha and beta as in the USBR Water Measurement Manual table, kb and the row b/B = 0 from memory.
 *  Example: kindsvaterCarterWeirFlow(0.03, 0.3, 0.6, 0.15)  ->  0.002900 */
export function kindsvaterCarterWeirFlow(
  head: number,
  width: number,
  channelWidth: number,
  crestHeight: number,
): number {
  if (!(head > 0) || !(width > 0)) return 0;
  const ratio = Math.min(1, width / channelWidth);
  let row = 1;
  while (row < coefficients.length - 1 && coefficients[row][0] < ratio) row++;
  const [from, alpha0, beta0, k0] = coefficients[row - 1];
  const [to, alpha1, beta1, k1] = coefficients[row];
  const t = (ratio - from) / (to - from);
  const alpha = alpha0 + t * (alpha1 - alpha0);
  const beta = beta0 + t * (beta1 - beta0);
  const widthCorrection = k0 + t * (k1 - k0);
  const coefficient = alpha + (beta * head) / crestHeight;
  const effectiveWidth = Math.max(0, width + widthCorrection);
  return coefficient * (2 / 3) * Math.sqrt(2 * standardGravity) * effectiveWidth * (head + 0.001) ** 1.5;
}
