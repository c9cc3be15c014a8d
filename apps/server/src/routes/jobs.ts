import { routes } from "@tidewright/protocol";
import type { App } from "../app.ts";
import { kept } from "../doors/kept.ts";
import { notThere } from "../doors/refusal.ts";
import { mount } from "../http/mount.ts";

/** Jobs: listed, read, changed and removed. */
export function mountJobs(app: App): void {
  const { jobs } = app.store;
  mount(app, routes.jobs, ({ query }) => jobs.search(query), { remembered: true });
  mount(app, routes.createJob, async ({ body, by }) => kept(await jobs.create(body, by)));
  const find = async (jobId: string) => {
    const found = await jobs.find(jobId);
    if (!found) throw notThere(`There is no job "${jobId}".`);
    return found;
  };
  mount(app, routes.job, ({ params }) => find(params.jobId), { remembered: true });
  mount(app, routes.changeJob, async ({ params, expected, body, by }) =>
    kept(await jobs.update(params.jobId, expected, body, by)),
  );
  mount(app, routes.removeJob, async ({ params, expected, by }) => kept(await jobs.remove(params.jobId, expected, by)));
}
