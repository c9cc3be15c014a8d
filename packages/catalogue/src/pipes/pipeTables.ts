/** Outer diameter and minimum walls of ASTM D1785 pipe, in inches as the standard prints them. */
export interface AstmRow {
  /** Nominal size in inches, as in the id. */ size: string;
  /** Nominal size as spoken. */ label: string;
  /** Outer diameter [in]. */ outer: number;
  /** Minimum wall, Schedule 40 [in]. */ wall40: number;
  /** Minimum wall, Schedule 80 [in]. */ wall80: number;
  /** Invented price per metre, Schedule 40 and 80 [EUR]. */ price40: number;
  price80: number;
}

/** Sizes of ASTM D1785 that the catalogue carries, one row per nominal size, lengths in inches, prices in EUR per m.
 *  Findings: none. Throws: never.
 *  Valid: 1/2 to 4 in; exact as printed.
 *  Source: ASTM D1785, tables of outside diameters and of wall thicknesses; prices invented.
 *  Example: astmTable[2].outer  ->  1.315                                                                      */
export const astmTable: readonly AstmRow[] = [
  { size: "0.5", label: "1/2 in", outer: 0.84, wall40: 0.109, wall80: 0.147, price40: 2.4, price80: 3.3 },
  { size: "0.75", label: "3/4 in", outer: 1.05, wall40: 0.113, wall80: 0.154, price40: 3.0, price80: 4.1 },
  { size: "1", label: "1 in", outer: 1.315, wall40: 0.133, wall80: 0.179, price40: 4.1, price80: 5.6 },
  { size: "1.25", label: "1 1/4 in", outer: 1.66, wall40: 0.14, wall80: 0.191, price40: 5.3, price80: 7.4 },
  { size: "1.5", label: "1 1/2 in", outer: 1.9, wall40: 0.145, wall80: 0.2, price40: 6.2, price80: 8.9 },
  { size: "2", label: "2 in", outer: 2.375, wall40: 0.154, wall80: 0.218, price40: 8.1, price80: 12.0 },
  { size: "2.5", label: "2 1/2 in", outer: 2.875, wall40: 0.203, wall80: 0.276, price40: 12.8, price80: 18.4 },
  { size: "3", label: "3 in", outer: 3.5, wall40: 0.216, wall80: 0.3, price40: 16.4, price80: 24.2 },
  { size: "4", label: "4 in", outer: 4.5, wall40: 0.237, wall80: 0.337, price40: 22.9, price80: 34.8 },
];

/** Outer diameter, walls and prices of metric pressure pipe; lengths in mm. */
export interface MetricRow {
  /** Outer diameter dn [mm]. */ outer: number;
  /** Minimum wall at PN 16, SDR 13.6 [mm]. */ wall16: number;
  /** Minimum wall at PN 10, SDR 21 [mm]; absent where the size is not made. */ wall10?: number;
  /** Invented price per metre, PN 16 and PN 10 [EUR]. */ price16: number;
  price10?: number;
}

/** Metric PVC-U pressure pipe, one row per outer diameter, lengths in mm, prices in EUR per m.
 *  Findings: none. Throws: never.
 *  Valid: 20 to 110 mm; walls as printed. They are dn / SDR rounded up to 0.1 mm, but for 40 mm at SDR 21, where
 *  1.905 is printed as 1.9. From 110 mm on PN 16 is also sold as SDR 17 and PN 10 as SDR 26: thinner walls, wider bore.
 *  Source: EN ISO 1452-2 and EN ISO 15493, tables of nominal wall thickness (which SDR is sold as which PN: from
 *  memory); prices invented.
 *  Example: metricTable[2].wall16  ->  2.4                                                                     */
export const metricTable: readonly MetricRow[] = [
  { outer: 20, wall16: 1.5, price16: 1.6 },
  { outer: 25, wall16: 1.9, price16: 2.2 },
  { outer: 32, wall16: 2.4, wall10: 1.6, price16: 3.3, price10: 2.5 },
  { outer: 40, wall16: 3.0, wall10: 1.9, price16: 4.9, price10: 3.6 },
  { outer: 50, wall16: 3.7, wall10: 2.4, price16: 7.2, price10: 5.2 },
  { outer: 63, wall16: 4.7, wall10: 3.0, price16: 11.1, price10: 7.9 },
  { outer: 75, wall16: 5.6, wall10: 3.6, price16: 15.6, price10: 11.0 },
  { outer: 90, wall16: 6.7, wall10: 4.3, price16: 22.2, price10: 15.6 },
  { outer: 110, wall16: 8.1, wall10: 5.3, price16: 32.9, price10: 23.2 },
];

/** Bore, outer diameter [mm] and invented price [EUR per m] of smooth flexible hose. */
export interface HoseRow {
  bore: number;
  outer: number;
  price: number;
}

/** Smooth flexible hose, one row per bore, lengths in mm, prices in EUR per m.
 *  Findings: none. Throws: never.
 *  Valid: smooth PVC or rubber hose; a wire-reinforced corrugated hose is several times rougher than these rows say.
 *  Source: common practice, no source: bores as sold by the metre; outer diameters vary between makers by 1 to 2 mm.
 *  Example: hoseTable[3].bore  ->  25                                                                          */
export const hoseTable: readonly HoseRow[] = [
  { bore: 12, outer: 16, price: 2.1 },
  { bore: 16, outer: 22, price: 2.9 },
  { bore: 20, outer: 26, price: 3.8 },
  { bore: 25, outer: 32, price: 5.2 },
  { bore: 32, outer: 40, price: 7.4 },
  { bore: 40, outer: 48, price: 10.2 },
  { bore: 50, outer: 60, price: 14.5 },
];
