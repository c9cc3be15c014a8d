import type { MessageKey } from "@tidewright/words";
import type { PartForm } from "../document/fields.ts";

/** Returns the usual words of caution for work on a part, most important first, by their names in the message catalogue. */
export function cautionsFor(form: PartForm): MessageKey[] {
  const { path } = form;
  if (path.startsWith("/power")) return ["cautions.electricity", "cautions.continuousLoad"];
  if (/^\/loops\/\d+\/pumps/.test(path)) return ["cautions.electricity", "cautions.dryPump"];
  if (path.startsWith("/tankPumps")) return ["cautions.electricity"];
  if (path === "/display") return ["cautions.lifting"];
  if (path === "/overflow") return ["cautions.drilling", "cautions.lifting"];
  if (path.startsWith("/sump")) return ["cautions.flood"];
  if (path.startsWith("/drains") || path.startsWith("/loops")) return ["cautions.cement", "cautions.flood"];
  return [];
}
