import type { Assessment, DrainState } from "@tidewright/advice";
import type { Look } from "../../output/deliver.ts";
import { percent } from "../../output/format.ts";
import { tableText } from "../../output/table.ts";

const right = { align: "right" } as const;

const kinds: Readonly<Record<DrainState["kind"], string>> = {
  ventedStandpipe: "vented standpipe",
  throttledSiphon: "throttled full siphon",
  openChannel: "open channel",
  dryStandpipe: "dry standpipe",
};

/** Returns what each drain carries beside the bracket of what it can: quiet and vented, as practised, in full siphon. */
export function drainsText({ drains }: Assessment, { format, width }: Look): string {
  const loads = tableText(
    [
      { head: "drain", flexible: true },
      { head: "flow", ...right },
      { head: "quiet", ...right },
      { head: "practice", ...right },
      { head: "siphon", ...right },
      { head: "box full", ...right },
    ],
    drains.map((drain) => [
      drain.name,
      format(drain.flow, "flow"),
      format(drain.capacity.quiet, "flow"),
      format(drain.capacity.practice, "flow"),
      format(drain.capacity.siphon, "flow"),
      format(drain.capacityAtRim, "flow"),
    ]),
    width,
  );
  const ways = tableText(
    [
      { head: "drain", flexible: true },
      { head: "role" },
      { head: "kind" },
      { head: "bore", ...right },
      { head: "runs", flexible: true },
      { head: "valve", ...right },
    ],
    drains.map((drain) => [
      drain.name,
      drain.role,
      kinds[drain.kind],
      format(drain.bore, "length"),
      regimeWords(drain.regime),
      drain.valveOpening === undefined
        ? "—"
        : `${percent(drain.valveOpening)}${drain.valveSolved === true ? " (found)" : ""}`,
    ]),
    width,
  );
  return [loads, ways].filter((each) => each !== "").join("\n\n");
}

/** Regimes are named in the engine as one word; a person reads them as several. */
function regimeWords(regime: string): string {
  return regime.replace(/([a-z])([A-Z])/g, "$1 $2").toLowerCase();
}
