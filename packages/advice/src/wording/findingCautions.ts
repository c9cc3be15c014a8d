import type { FindingCode } from "../finding.ts";

/** Which words of caution go with a finding: `findings.caution.<name>` among the words. */
export const findingCautions: Readonly<
  Partial<
    Record<FindingCode, "leak" | "glass" | "hangOn" | "cement" | "plug" | "strainers" | "checkValve" | "siphonBreak">
  >
> = {
  "drain/beyond-practice": "glass",
  "drain/beyond-siphon": "plug",
  "drain/no-emergency": "glass",
  "overflow/box-over-rim": "plug",
  "overflow/display-over-rim": "plug",
  "overflow/siphon-alone": "hangOn",
  "overflow/siphon-gathers-air": "hangOn",
  "overflow/siphon-runs-dry": "plug",
  "pipe/fast": "cement",
  "pipe/bulkhead-undersized": "glass",
  "pump/not-flooded": "leak",
  "pump/wrong-place": "leak",
  "pump/wrong-voltage": "leak",
  "sump/over-rim": "plug",
  "sump/too-small": "plug",
  "sump/little-room": "plug",
  "power/circuit-overload": "leak",
  "overTime/power-cut": "plug",
  "overTime/restart": "plug",
  "overTime/drain-blocked": "strainers",
  "overTime/overflow-siphon-lost": "hangOn",
  "overTime/check-valve-stuck": "checkValve",
  "overTime/siphon-break-clogged": "siphonBreak",
  "overTime/tight": "plug",
  "overTime/running": "plug",
};
