import { startHistory } from "@tidewright/design";
import { demoJobs } from "../document/demoJobs.ts";
import { layFirst, startBench } from "../state/bench.ts";
import { Bench } from "./Bench.tsx";

let tried: number | undefined;

/** The bench on a demonstration job; what is done there is not kept. */
export function TryBench({ job }: { readonly job: number }) {
  // Before the first drawing, and once: what is on the table stays when the page is drawn again.
  if (tried !== job) {
    tried = job;
    layFirst(startHistory((demoJobs[job] ?? demoJobs[0]!).design));
    startBench();
  }
  return <Bench />;
}
