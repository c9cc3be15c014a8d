import { pumpRefs } from "@tidewright/design";
import { routes } from "@tidewright/protocol";
import type { App } from "../app.ts";
import { kept } from "../doors/kept.ts";
import { badInput, notThere } from "../doors/refusal.ts";
import { mount } from "../http/mount.ts";
import { checkDocument } from "./checkDocument.ts";

/** Documents that are looked into for a pump. */
const mostWithPump = 1000;

/** Designs and variants with their whole history; a document that cannot be read is not kept. */
export function mountDesigns(app: App): void {
  const { designs, jobs } = app.store;
  const open = async (designId: string) => {
    const found = await designs.find(designId);
    if (!found) throw notThere(`There is no design "${designId}".`);
    return found;
  };
  const ofJob = async (jobId: string) => {
    const items = await designs.ofJob(jobId);
    // An empty list of a job that is not there would read as a job without designs.
    if (items.length === 0 && !(await jobs.find(jobId))) throw notThere(`There is no job "${jobId}".`);
    return { items };
  };
  mount(app, routes.designsOfJob, ({ params }) => ofJob(params.jobId), { remembered: true });
  mount(app, routes.createDesign, async ({ params: { jobId }, body, by }) => {
    await checkDocument(app, body.document);
    return kept(await designs.create({ ...body, jobId, document: body.document }, by));
  });
  const latestOf = async (designId: string) => {
    const [head, latest] = await Promise.all([open(designId), designs.latest(designId)]);
    if (!latest) throw new Error(`design ${designId} has no revision`);
    // Somebody may have written between the two readings: the document decides.
    return { head: { ...head, revision: latest.number }, latest };
  };
  mount(app, routes.designsWithPump, async ({ params: { pumpId } }) => {
    // What stands somewhere in the text need not be the name of a pump: the documents say.
    const found = await designs.holding(JSON.stringify(pumpId), mostWithPump + 1);
    const items = found
      .slice(0, mostWithPump)
      .filter(({ document }) => pumpRefs(document).some(({ ref }) => ref === pumpId))
      .map(({ head, jobName }) => ({ head, jobName }));
    return { items, more: found.length > mostWithPump };
  });
  mount(app, routes.design, ({ params }) => latestOf(params.designId), { remembered: true });
  mount(app, routes.appendRevision, async ({ params: { designId }, expected, body, by }) => {
    await checkDocument(app, body.document, async () => (await designs.latest(designId))?.document);
    const { document, ...options } = body;
    return kept(await designs.append(designId, expected, document, by, options));
  });
  mount(app, routes.revisions, async ({ params: { designId }, query }) => {
    await open(designId);
    return { items: await designs.history(designId, { limit: 100, ...query }) };
  });
  mount(app, routes.revision, async ({ params: { designId, number } }) => {
    const found = await designs.revision(designId, revisionNumber(number));
    if (!found) throw notThere(`There is no revision ${number} of a design "${designId}".`);
    return found;
  });
  mount(app, routes.nameRevision, async ({ params: { designId, number }, body, by }) =>
    kept(await designs.nameVersion(designId, revisionNumber(number), body.name, by)),
  );
  mount(app, routes.createVariant, async ({ params: { designId }, body, by }) => {
    const { revision } = body;
    const from = () => (revision === undefined ? designs.latest(designId) : designs.revision(designId, revision));
    if (body.document !== undefined) await checkDocument(app, body.document, async () => (await from())?.document);
    return kept(await designs.duplicate(designId, body, by));
  });
}

function revisionNumber(text: string): number {
  if (/^[1-9]\d{0,8}$/.test(text)) return Number(text);
  throw badInput([
    { path: "{number}", message: "is no number of a revision", value: text, fix: "give a whole number from 1" },
  ]);
}
