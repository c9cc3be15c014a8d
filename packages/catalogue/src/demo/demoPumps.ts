import { readPumpCsv } from "../csv/readPumpCsv.ts";
import type { PumpRow } from "../pumps/pump.ts";
import { demoPumpTable } from "./demoPumpTable.ts";

/** The pumps of the demonstration catalogue, read from their table. The web's build puts the rows that were read in this
 *  file's place, so that a page need not bring along what reads tables.
 *  Result: readonly array of 72 PumpRow, SI, EUR.
 *  Findings: none. Throws: never.
 *  Valid: for demonstration and tests; no row describes a real product.
 *  Source: invented.
 *  Example: demoPumps[0].id  ->  "brayne-k8"                                                                   */
export const demoPumps: readonly PumpRow[] = readPumpCsv(demoPumpTable).pumps;
