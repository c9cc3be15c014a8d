import type { Design } from "@tidewright/design";

const files = import.meta.glob<Design>("../../../../examples/*.json", { eager: true, import: "default" });

/** A job that comes with the bench. */
export interface DemoJob {
  readonly id: string;
  readonly design: Design;
}

// The four jobs of the shop come first, in this order; every other example follows by name.
const firstJobs = ["waiting-room-reef", "school-corridor", "hotel-lobby", "first-tank"];

/** The example jobs, the shop's four first. Each is a whole design document. */
export const demoJobs: readonly DemoJob[] = Object.entries(files)
  .map(([path, design]) => ({ id: path.replace(/^.*\/|\.json$/g, ""), design }))
  .filter(({ design }) => "display" in design)
  .sort((a, b) => place(a.id) - place(b.id) || a.id.localeCompare(b.id));

function place(id: string): number {
  const at = firstJobs.findIndex((job) => id.startsWith(job));
  return at < 0 ? firstJobs.length : at;
}
