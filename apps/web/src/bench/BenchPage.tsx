import { startHistory } from "@tidewright/design";
import { demoJobs } from "../document/demoJobs.ts";
import { layFirst, startBench } from "../state/bench.ts";
import { Bench } from "./Bench.tsx";

/** The bench on a demonstration job; what is done there is not kept. */
export function TryBench({ job }: { readonly job: number }) {
  begin(job);
  return <Bench />;
}

/** The bench on a design of the shop. */
export function KeptBench({ designId: _ }: { readonly designId: string }) {
  begin(0);
  return <Bench />;
}

let begun: number | undefined;

function begin(job: number): void {
  if (begun === job) return;
  begun = job;
  layFirst(startHistory((demoJobs[job] ?? demoJobs[0]!).design));
  startBench();
}
