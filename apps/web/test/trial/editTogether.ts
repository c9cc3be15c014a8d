import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import type { DesignHead, Job, Revision } from "@tidewright/protocol";
import { startServer } from "../../../../tools/startServer.ts";
import { layLines } from "./brokenLine.ts";
import { TrialEditor } from "./editor.ts";
import { type Ask, judge, readKept } from "./judge.ts";

/** How long and how densely the trial works: `seconds` of work, `pace` between two edits of one editor [ms]. */
export interface Together {
  readonly jobs: number;
  readonly editorsPerJob: number;
  readonly seconds: number;
  readonly pace: number;
  readonly built?: boolean;
}

/** What the trial found. `stuck` names who did not settle after the lines were whole, `wrong` everything lost. */
export interface TogetherFigures {
  readonly counts: Readonly<Record<string, number>>;
  readonly settled: number;
  readonly stuck: readonly string[];
  readonly wrong: readonly string[];
}

/** How long editors may take to settle once all lines are whole [ms]. */
const settlesWithin = 120_000;

/** Lets editors work on a few designs of the real server at once over lines that break, heals the lines, waits until all
 *  have settled, and looks for everything that anybody did.
 *  how   -> figures; `settled` is the time from healing until all hold what the server holds [ms] */
export async function editTogether(how: Together): Promise<TogetherFigures> {
  const data = mkdtempSync(join(tmpdir(), "tidewright-together-"));
  const server = await startServer({ data, ...(how.built ? { built: true } : {}) });
  const layAside = layLines(server.address);
  const editors: TrialEditor[] = [];
  try {
    const ask: Ask = async (path) => (await fetch(new URL(path, server.address))).json() as never;
    const teams = await setUp(server.address, how, editors);
    await Promise.all(editors.map((editor) => editor.open()));
    const until = performance.now() + how.seconds * 1000;
    await Promise.all(editors.map((editor) => editor.work(until, how.pace)));
    const healed = performance.now();
    for (const { line } of editors) line.heal();
    const stuck = await settle(ask, editors);
    const settled = performance.now() - healed;
    const wrong: string[] = [];
    let [revisions, designs] = [0, 0];
    for (const { jobId, members } of teams) {
      const kept = await readKept(ask, jobId);
      designs += kept.size;
      for (const each of kept.values()) revisions += each.revisions.length;
      wrong.push(...judge(kept, members));
    }
    return { counts: { ...sums(editors), revisions, designs }, settled, stuck, wrong };
  } finally {
    for (const editor of editors) editor.stop();
    layAside();
    await server.kill();
    rmSync(data, { recursive: true, force: true });
  }
}

async function setUp(address: string, { jobs, editorsPerJob }: Together, editors: TrialEditor[]) {
  const example = readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8");
  const make = async <Value>(path: string, body: unknown): Promise<Value> => {
    const headers = { "X-Tidewright": "1", "Content-Type": "application/json" };
    const response = await fetch(new URL(path, address), { method: "POST", headers, body: JSON.stringify(body) });
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return (await response.json()) as Value;
  };
  const teams: { readonly jobId: string; readonly members: readonly TrialEditor[] }[] = [];
  for (let place = 1; place <= jobs; place++) {
    const job = await make<Job>("api/jobs", { name: `Job ${place}` });
    const document: unknown = JSON.parse(example);
    const design = await make<DesignHead>(`api/jobs/${job.id}/designs`, { name: "As drawn", document });
    const members = Array.from({ length: editorsPerJob }, () => new TrialEditor(address, design.id));
    editors.push(...members);
    teams.push({ jobId: job.id, members });
  }
  return teams;
}

/** Waits until every editor holds what the server holds; returns those who do not in the end. */
async function settle(ask: Ask, editors: readonly TrialEditor[]): Promise<string[]> {
  const end = performance.now() + settlesWithin;
  for (;;) {
    const latest = new Map<string, Revision>();
    for (const designId of new Set(editors.map(({ standing }) => standing.designId))) {
      const opened = await ask<{ latest?: Revision }>(`api/designs/${designId}`);
      if (opened.latest) latest.set(designId, opened.latest);
    }
    const apart = editors.flatMap(({ standing, present }, index) => {
      const { designId, outbox, writing } = standing;
      const there = latest.get(designId);
      const same =
        outbox.phase === "kept" &&
        !writing &&
        outbox.acknowledged.revision === there?.number &&
        isDeepStrictEqual(present, there.document);
      return same ? [] : [`editor ${index}: ${outbox.phase} at ${outbox.acknowledged.revision} of ${there?.number}`];
    });
    if (apart.length === 0 || performance.now() > end) return apart;
    await new Promise((done) => setTimeout(done, 100));
  }
}

function sums(editors: readonly TrialEditor[]): Record<string, number> {
  const sum: Record<string, number> = { editors: editors.length, acknowledged: 0 };
  for (const { counts, line, acknowledged } of editors) {
    sum["acknowledged"]! += acknowledged.length;
    for (const [name, count] of Object.entries({ ...counts, ...line.cuts })) sum[name] = (sum[name] ?? 0) + count;
  }
  // Whoever came later than somebody else was joined with it or set apart.
  const { late = 0, ...rest } = sum;
  return { ...rest, joined: late - (rest["apart"] ?? 0) };
}
