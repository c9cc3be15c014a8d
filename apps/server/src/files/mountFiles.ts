import { routes } from "@tidewright/protocol";
import type { App } from "../app.ts";
import { kept } from "../doors/kept.ts";
import { notThere } from "../doors/refusal.ts";
import { mount } from "../http/mount.ts";
import { keepFile } from "./keepFile.ts";
import { serveFile } from "./serveFile.ts";

/** Files of jobs and of the shop: listed, kept once their content is known, handed out, removed. */
export function mountFiles(app: App): void {
  const { files, jobs } = app.store;
  mount(app, routes.filesOfJob, async ({ params: { jobId } }) => {
    if (!(await jobs.find(jobId))) throw notThere(`There is no job "${jobId}".`);
    return { items: await files.list(jobId) };
  });
  mount(app, routes.putFileOfJob, ({ params, query, request, by }) =>
    keepFile(app.store, params.jobId, query, request, by),
  );
  mount(app, routes.filesOfShop, async () => ({ items: await files.list(null) }));
  mount(app, routes.putFileOfShop, ({ query, request, by }) => keepFile(app.store, null, query, request, by));
  mount(app, routes.file, async ({ params: { fileId }, request }) => {
    const file = await files.get(fileId);
    if (!file) throw notThere(`There is no file "${fileId}".`);
    return serveFile(file, request.headers.get("If-None-Match") ?? undefined);
  });
  mount(app, routes.removeFile, async ({ params, by }) => kept(await files.remove(params.fileId, by)));
}
