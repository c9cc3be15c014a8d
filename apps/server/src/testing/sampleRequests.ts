import { randomUUID } from "node:crypto";
import { type Routes, routes } from "@tidewright/protocol";
import { type FreshApp, type Sent, sampleDocument, samplePassword } from "./freshApp.ts";
import { png } from "./sampleFiles.ts";

/** A request that is right in everything but, perhaps, who sends it. */
export interface SampleRequest extends Sent {
  readonly path: string;
}

let count = 0;
/** Things made for one request, so that what one asker removes another one still finds. */
export async function sampleRequest(fresh: FreshApp, routeId: keyof Routes): Promise<SampleRequest> {
  const { store, clock } = fresh;
  const by = { author: "set-up", at: new Date(clock.now).toISOString() };
  const expiresAt = new Date(clock.now + 3_600_000).toISOString();
  const taken = async <T>(work: Promise<{ ok: true; value: T } | { ok: false }>): Promise<T> => {
    const outcome = await work;
    if (!outcome.ok) throw new Error(`the set-up was refused: ${JSON.stringify(outcome)}`);
    return outcome.value;
  };
  const name = `Sample ${++count}`;
  const newCustomer = () => taken(store.customers.create({ name }, by));
  const newJob = () => taken(store.jobs.create({ name }, by));
  const newDesign = async () =>
    taken(store.designs.create({ jobId: (await newJob()).id, name, document: sampleDocument }, by));
  const newFile = async () => {
    const file = { kind: "photo", name: "sump.png", contentType: "image/png", bytes: png() } as const;
    return taken(store.files.put({ ...file, jobId: (await newJob()).id }, by));
  };
  const picture = `kind=photo&name=${encodeURIComponent("sump.png")}`;
  const made: { readonly [id in keyof Routes]: () => Promise<Omit<SampleRequest, "method">> } = {
    session: async () => ({ path: "/api/session" }),
    signIn: async () => ({ path: "/api/session", json: { name: "One owner", password: samplePassword } }),
    signOut: async () => ({ path: "/api/session" }),
    changePassword: async () => ({
      path: "/api/session/password",
      json: { current: samplePassword, next: samplePassword },
    }),
    firstOwner: async () => ({
      path: "/api/first-owner",
      json: { token: fresh.doors.firstOwner.secret, name: "One owner", password: samplePassword },
    }),
    accounts: async () => ({ path: "/api/accounts" }),
    createAccount: async () => ({ path: "/api/accounts", json: { name, role: "staff", password: samplePassword } }),
    changeAccount: async () => {
      const account = await taken(store.accounts.create({ name, role: "staff", passwordHash: "none" }, by));
      return { path: `/api/accounts/${account.id}`, json: { role: "readOnly" }, version: 1 };
    },
    audit: async () => ({ path: "/api/audit" }),
    customers: async () => ({ path: "/api/customers?text=a" }),
    unusedCustomers: async () => ({ path: `/api/customers/unused?since=${by.at}` }),
    createCustomer: async () => ({ path: "/api/customers", json: { name, contact: "at the shop", notes: "early" } }),
    customer: async () => ({ path: `/api/customers/${(await newCustomer()).id}` }),
    changeCustomer: async () => ({
      path: `/api/customers/${(await newCustomer()).id}`,
      json: { name, contact: "by letter", notes: "late" },
      version: 1,
    }),
    eraseCustomer: async () => ({ path: `/api/customers/${(await newCustomer()).id}/erasure` }),
    jobs: async () => ({ path: "/api/jobs?text=a" }),
    createJob: async () => ({ path: "/api/jobs", json: { name, notes: "measured" } }),
    job: async () => ({ path: `/api/jobs/${(await newJob()).id}` }),
    changeJob: async () => ({
      path: `/api/jobs/${(await newJob()).id}`,
      json: { name, notes: "built", stage: "built" },
      version: 1,
    }),
    removeJob: async () => ({ path: `/api/jobs/${(await newJob()).id}`, version: 1 }),
    designsOfJob: async () => ({ path: `/api/jobs/${(await newDesign()).jobId}/designs` }),
    createDesign: async () => ({
      path: `/api/jobs/${(await newJob()).id}/designs`,
      json: { name, document: sampleDocument },
    }),
    design: async () => ({ path: `/api/designs/${(await newDesign()).id}` }),
    appendRevision: async () => ({
      path: `/api/designs/${(await newDesign()).id}/revisions`,
      json: { document: sampleDocument, editId: randomUUID() },
      version: 1,
    }),
    revisions: async () => ({ path: `/api/designs/${(await newDesign()).id}/revisions` }),
    revision: async () => ({ path: `/api/designs/${(await newDesign()).id}/revisions/1` }),
    nameRevision: async () => ({ path: `/api/designs/${(await newDesign()).id}/revisions/1/name`, json: { name } }),
    createVariant: async () => ({ path: `/api/designs/${(await newDesign()).id}/variants`, json: { name } }),
    catalogueRows: async () => ({ path: "/api/catalogue/note" }),
    putCatalogueRow: async () => ({
      path: `/api/catalogue/note/${randomUUID()}`,
      json: { data: { label: name } },
      version: 0,
    }),
    removeCatalogueRow: async () => {
      const row = await taken(store.catalogue.put("note", randomUUID(), 0, { label: name }, by));
      return { path: `/api/catalogue/note/${row.id}`, version: 1 };
    },
    designsWithPump: async () => ({ path: "/api/pumps/house-1/designs" }),
    settings: async () => ({ path: "/api/settings" }),
    changeSettings: async () => {
      const { settings, version } = await store.settings.read();
      return { path: "/api/settings", json: { ...settings, name, address: "1 Quay" }, version };
    },
    filesOfJob: async () => ({ path: `/api/jobs/${(await newJob()).id}/files` }),
    putFileOfJob: async () => ({ path: `/api/jobs/${(await newJob()).id}/files?${picture}`, bytes: png() }),
    filesOfShop: async () => ({ path: "/api/files" }),
    putFileOfShop: async () => ({ path: `/api/files?${picture}`, bytes: png() }),
    file: async () => ({ path: `/api/files/${(await newFile()).id}` }),
    removeFile: async () => ({ path: `/api/files/${(await newFile()).id}` }),
    links: async () => ({ path: "/api/links" }),
    createLink: async () => ({ path: "/api/links", json: { kind: "view", designId: (await newDesign()).id, days: 7 } }),
    revokeLink: async () => {
      const { link } = await taken(store.links.create({ kind: "intake", expiresAt }, by));
      return { path: `/api/links/${link.id}` };
    },
    shared: async () => ({ path: "/api/shared" }),
    sharedLogo: async () => {
      const { settings, version } = await store.settings.read();
      const file = { kind: "logo", name: "logo.png", contentType: "image/png", bytes: png() } as const;
      const logo = await taken(store.files.put(file, by));
      await taken(store.settings.write(version, { ...settings, logoFileId: logo.id }, by));
      return { path: "/api/shared/logo" };
    },
    intake: async () => ({ path: "/api/intake" }),
    answerIntake: async () => ({
      path: "/api/intake",
      json: {
        name,
        contact: "at the shop",
        notes: "quiet",
        answers: { name, tank: { volume: { value: 300, unit: "L" } } },
      },
    }),
    events: async () => ({ path: "/api/events" }),
    backup: async () => ({ path: "/api/backup" }),
  };
  return { ...(await made[routeId]()), method: routes[routeId].method };
}
