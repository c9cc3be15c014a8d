import { type Assessment, assess, withSweep } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import type { RevisionEntry } from "@tidewright/protocol";
import { useEffect, useMemo, useState } from "react";
import { useCatalogue } from "../catalogue/currentCatalogue.ts";
import type { RevisionName } from "../state/address.ts";
import { signedOut } from "../state/session.ts";
import { readHead, readRevision } from "../versions/readRevision.ts";
import { useOverTime } from "./useOverTime.ts";

const none: readonly Design[] = [];

/** One side of a comparison with its numbers. */
export interface ComparedSide {
  readonly of: RevisionName;
  readonly designName: string;
  readonly entry: RevisionEntry;
  readonly design: Design;
  readonly assessment: Assessment;
}

/** Both sides once they are there, or why not; whether what happens over time is among their findings yet. */
export type Compared = Sides<ComparedSide> & { readonly played: boolean };

type ReadSide = Omit<ComparedSide, "assessment">;
type Sides<Side> =
  | { readonly state: "loading" }
  | { readonly state: "failed"; readonly why: string }
  | { readonly state: "there"; readonly left: Side; readonly right: Side };

/** Fetches two revisions and assesses both. */
export function useCompared(left: RevisionName, right: RevisionName): Compared {
  const [read, setRead] = useState<Sides<ReadSide>>({ state: "loading" });
  const catalogue = useCatalogue();
  const wanted = `${left.designId} ${left.revision} ${right.designId} ${right.revision}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the names may come as new objects that say the same
  useEffect(() => {
    let here = true;
    setRead({ state: "loading" });
    void Promise.all([sideOf(left), sideOf(right)]).then(([one, other]) => {
      if (!here) return;
      if ("why" in one) setRead({ state: "failed", why: one.why });
      else if ("why" in other) setRead({ state: "failed", why: other.why });
      else setRead({ state: "there", left: one, right: other });
    });
    return () => {
      here = false;
    };
  }, [wanted]);
  const assessed = useMemo((): Sides<ComparedSide> => {
    if (read.state !== "there") return read;
    const withNumbers = (side: ReadSide) => ({ ...side, assessment: assess(side.design, catalogue) });
    return { state: "there", left: withNumbers(read.left), right: withNumbers(read.right) };
  }, [read, catalogue]);
  const designs = useMemo(
    () => (assessed.state === "there" ? [assessed.left.design, assessed.right.design] : none),
    [assessed],
  );
  const overTime = useOverTime(designs);
  return useMemo(() => {
    if (assessed.state !== "there") return { ...assessed, played: false };
    const joined = (side: ComparedSide): ComparedSide => {
      const sweep = overTime.get(side.design);
      return sweep === undefined ? side : { ...side, assessment: withSweep(side.assessment, sweep) };
    };
    const played = designs.every((design) => overTime.has(design));
    return { state: "there", left: joined(assessed.left), right: joined(assessed.right), played };
  }, [assessed, designs, overTime]);
}

async function sideOf(of: RevisionName): Promise<ReadSide | { readonly why: string }> {
  const [read, head] = await Promise.all([readRevision(of), readHead(of.designId)]);
  if (!read.ok) {
    if (read.signIn) signedOut();
    return { why: read.why };
  }
  const { entry, design } = read;
  return { of, designName: head?.name ?? design.name, entry, design };
}
