import { type Assessment, assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import type { RevisionEntry } from "@tidewright/protocol";
import { useEffect, useState } from "react";
import type { RevisionName } from "../state/address.ts";
import { signedOut } from "../state/session.ts";
import { readHead, readRevision } from "../versions/readRevision.ts";

/** One side of a comparison with its numbers. */
export interface ComparedSide {
  readonly of: RevisionName;
  readonly designName: string;
  readonly entry: RevisionEntry;
  readonly design: Design;
  readonly assessment: Assessment;
}

/** Both sides once they are there, or why not. */
export type Compared =
  | { readonly state: "loading" }
  | { readonly state: "failed"; readonly why: string }
  | { readonly state: "there"; readonly left: ComparedSide; readonly right: ComparedSide };

/** Fetches two revisions and assesses both. */
export function useCompared(left: RevisionName, right: RevisionName): Compared {
  const [compared, setCompared] = useState<Compared>({ state: "loading" });
  const wanted = `${left.designId} ${left.revision} ${right.designId} ${right.revision}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the names may come as new objects that say the same
  useEffect(() => {
    let here = true;
    setCompared({ state: "loading" });
    void Promise.all([sideOf(left), sideOf(right)]).then(([one, other]) => {
      if (!here) return;
      if ("why" in one) setCompared({ state: "failed", why: one.why });
      else if ("why" in other) setCompared({ state: "failed", why: other.why });
      else setCompared({ state: "there", left: one, right: other });
    });
    return () => {
      here = false;
    };
  }, [wanted]);
  return compared;
}

async function sideOf(of: RevisionName): Promise<ComparedSide | { readonly why: string }> {
  const [read, head] = await Promise.all([readRevision(of), readHead(of.designId)]);
  if (!read.ok) {
    if (read.signIn) signedOut();
    return { why: read.why };
  }
  const { entry, design } = read;
  return { of, designName: head?.name ?? design.name, entry, design, assessment: assess(design, demoCatalogue) };
}
