/** Every limit that a finding can break, with where it comes from. SI. */
export const limits = {
  pressurePipeSpeed: {
    value: 1.5,
    source: "common practice, no source: up to 1.5 m/s in small pressure pipes keeps noise and loss low",
  },
  suctionPipeSpeed: { value: 1.0, source: "common practice, no source: up to 1 m/s on the suction side" },
  slowPipeSpeed: { value: 0.3, source: "common practice, no source: below 0.3 m/s detritus settles in the pipe" },
  jetSpeed: {
    value: 4,
    source: "common practice, no source: above 4 m/s a nozzle hisses and hurts what is in front of it",
  },
  nearShutoff: {
    value: 0.1,
    source: "common practice, no source: below a tenth of the largest flow a pump heats up and hums",
  },
  nearRunout: {
    value: 0.95,
    source: "common practice, no source: at the end of its curve a pump is noisy and its data end",
  },
  quietFroude: {
    value: 0.3,
    source:
      "self-venting flow, Fr 0.3 (after Hills 1983 and Simpson 1978), and the vented stack at 7/24 (Wyly and Eaton 1961)",
  },
  practice: { value: 1, source: "common practice, no source: rules of thumb for 1, 1 1/2 and 2 in drains" },
  siphon: { value: 1, source: "energy equation of the full pipe" },
  clearingFroude: { value: 1, source: "air is swept out above about Fr 1 (after Hills 1983 and Simpson 1978)" },
  freeboard: { value: 0.02, source: "common practice, no source: 20 mm up to the rim" },
  sumpReserve: { value: 0.1, source: "common practice, no source: a tenth of the drain-down volume in hand" },
  npshMargin: { value: 3, source: "common practice, no source: 3 m covers every pump of this size" },
  circuit: {
    value: 0.8,
    source: "continuous load at most 80 % of the breaker (US National Electrical Code 210.20(A)); local code decides",
  },
  returnDepth: { value: 0.08, source: "common practice, no source: 80 mm over the intake against drawing in air" },
  settled: { value: 1e-9, source: "own limit: flows and heads to 1e-9 of themselves, levels to 1e-7 m" },
  turbulent: {
    value: 4000,
    source:
      "between Reynolds numbers 2000 and 4000 published friction curves differ by 30 % (at 3000 Churchill 1977 and Dunlop 1991)",
  },
  geometry: { value: 0, source: "geometry" },
  hangOn: {
    value: 0,
    source: "common practice, no source: air gathers at the crest of a siphon and one day stops it; time by continuity",
  },
  wish: { value: 0, source: "the wishes of this design" },
  maker: { value: 0, source: "the maker's data" },
  service: { value: 0, source: "common practice, no source: what wears must come out without a saw" },
  caution: { value: 0, source: "usual caution; local codes and licensed practice decide" },
} as const;
