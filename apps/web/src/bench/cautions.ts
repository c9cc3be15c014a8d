import type { PartForm } from "../document/fields.ts";

const electricity =
  "Water and mains meet here. Feed everything through a residual-current device (RCD, GFCI), hang drip loops below the sockets, and keep sockets out of splash. Fixed wiring is for a licensed electrician; local code decides.";
const continuousLoad =
  "Pumps never rest: keep the load on a circuit at or below 80 % of its breaker, heaters and chillers included.";
const lifting =
  "Glass tanks are heavier than they look: empty, two or more people or suction lifters; never lift by the rim, never move one with water in it. The floor must carry the full weight.";
const cement =
  "Solvent cement and primer: open windows, no flame, gloves; let joints cure as the maker says, then rinse before animals see the water.";
const drilling = "Drill only glass known not to be tempered, wet and slow, with eye protection.";
const flood =
  "A check valve alone is no flood protection: it sticks when overgrown. Leave room in the sump for what falls back, and test with the plug pulled before you leave.";
const dryPump =
  "A dry pump needs its intake below the water line and air around it; a union and a valve on each side let it out for service.";

/** Returns the usual words of caution for work on a part, most important first. */
export function cautionsFor(form: PartForm): string[] {
  const { path } = form;
  if (path.startsWith("/power")) return [electricity, continuousLoad];
  if (/^\/loops\/\d+\/pumps/.test(path)) return [electricity, dryPump];
  if (path.startsWith("/tankPumps")) return [electricity];
  if (path === "/display") return [lifting];
  if (path === "/overflow") return [drilling, lifting];
  if (path.startsWith("/sump")) return [flood];
  if (path.startsWith("/drains") || path.startsWith("/loops")) return [cement, flood];
  return [];
}

/** Words of caution for a system that begins at the counter. */
export const counterCautions: readonly string[] = [lifting, electricity, flood];
