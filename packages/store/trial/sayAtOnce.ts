import { writeSync } from "node:fs";

/** Writes a line past Node's buffers: what a reader has seen was done before it was said. */
export function sayAtOnce(line: string): void {
  let rest = Buffer.from(`${line}\n`);
  while (rest.length > 0) {
    try {
      rest = rest.subarray(writeSync(1, rest));
    } catch (error) {
      // A pipe whose reader is busy; what was done stays done, only its word waits.
      if ((error as { code?: string }).code !== "EAGAIN") throw error;
    }
  }
}
