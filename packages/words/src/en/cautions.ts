/** The usual words of caution for work on a part. */
export const cautions = {
  "cautions.electricity":
    "Water and mains meet here. Feed everything through a residual-current device (RCD, GFCI), hang drip loops below the sockets, and keep sockets out of splash. Fixed wiring is for a licensed electrician; local code decides.",
  "cautions.continuousLoad":
    "Pumps never rest: keep the load on a circuit at or below 80 % of its breaker, heaters and chillers included.",
  "cautions.lifting":
    "Glass tanks are heavier than they look: empty, two or more people or suction lifters; never lift by the rim, never move one with water in it. The floor must carry the full weight.",
  "cautions.cement":
    "Solvent cement and primer: open windows, no flame, gloves; let joints cure as the maker says, then rinse before animals see the water.",
  "cautions.drilling": "Drill only glass known not to be tempered, wet and slow, with eye protection.",
  "cautions.flood":
    "A check valve alone is no flood protection: it sticks when overgrown. Leave room in the sump for what falls back, and test with the plug pulled before you leave.",
  "cautions.dryPump":
    "A dry pump needs its intake below the water line and air around it; a union and a valve on each side let it out for service.",
} as const;
