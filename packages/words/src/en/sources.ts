/** Where limits come from, word for word as findings carry them. */
export const sources = {
  "sources.pressurePipeSpeed":
    "common practice, no source: up to 1.5 m/s in small pressure pipes keeps noise and loss low",
  "sources.suctionPipeSpeed": "common practice, no source: up to 1 m/s on the suction side",
  "sources.slowPipeSpeed": "common practice, no source: below 0.3 m/s detritus settles in the pipe",
  "sources.jetSpeed": "common practice, no source: above 4 m/s a nozzle hisses and hurts what is in front of it",
  "sources.nearShutoff": "common practice, no source: below a tenth of the largest flow a pump heats up and hums",
  "sources.nearRunout": "common practice, no source: at the end of its curve a pump is noisy and its data end",
  "sources.quietFroude":
    "self-venting flow, Fr 0.3 (after Hills 1983 and Simpson 1978), and the vented stack at 7/24 (Wyly and Eaton 1961)",
  "sources.practice": "common practice, no source: rules of thumb for 1, 1 1/2 and 2 in drains",
  "sources.siphon": "energy equation of the full pipe",
  "sources.clearingFroude": "air is swept out above about Fr 1 (after Hills 1983 and Simpson 1978)",
  "sources.freeboard": "common practice, no source: 20 mm up to the rim",
  "sources.sumpReserve": "common practice, no source: a tenth of the drain-down volume in hand",
  "sources.npshMargin": "common practice, no source: 3 m covers every pump of this size",
  "sources.circuit":
    "continuous load at most 80 % of the breaker (US National Electrical Code 210.20(A)); local code decides",
  "sources.returnDepth": "common practice, no source: 80 mm over the intake against drawing in air",
  "sources.settled": "own limit: flows and heads to 1e-9 of themselves, levels to 1e-7 m",
  "sources.turbulent":
    "between Reynolds numbers 2000 and 4000 published friction curves differ by 30 % (at 3000 Churchill 1977 and Dunlop 1991)",
  "sources.geometry": "geometry",
  "sources.wish": "the wishes of this design",
  "sources.maker": "the maker's data",
  "sources.service": "common practice, no source: what wears must come out without a saw",
  "sources.caution": "usual caution; local codes and licensed practice decide",
  "sources.hangOn":
    "common practice, no source: air gathers at the crest of a siphon and one day stops it; time by continuity",
  "sources.simulated": "own simulation of all levels",
  "sources.commonPractice": "common practice, no source",
  "sources.softCorals":
    "Fabricius, Genin and Benayahu 1995: food uptake of Dendronephthya best near 15 cm/s; turnover common practice, no source",
  "sources.largePolypStony":
    "Wijgerde et al. 2012: Galaxea colonies feed best at 5 to 10 cm/s; turnover common practice, no source",
  "sources.branchingStony":
    "Nakamura and Yamasaki 2005: better growth at 20 than below 3 cm/s; turnover common practice, no source",
  "sources.start.shaft": "rim weir and drowned throat of a standpipe: USBR, Design of Small Dams",
  "sources.start.weir": "Th. Rehbock 1929 in ISO 1438:2017 without the head term; flow as wished",
  "sources.start.ranking": "ranking of the catalogue on this design",
  "sources.start.affinity": "affinity laws (ISO 9906:2012); solved on this design",
  "sources.start.salinity": "practical salinity 35: UNESCO Technical Papers in Marine Science 44 (1983)",
  "sources.start.evaporation":
    "evaporation: ASHRAE Handbook HVAC Applications, Natatoriums; a week common practice, no source",
  "sources.start.tubes": "head of full tubes: energy equation; losses after Crane TP-410",
} as const;
