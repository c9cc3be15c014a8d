import { type Customer, type CustomerFields, type Job, type JobFields, routes } from "@tidewright/protocol";
import { ask } from "../api/ask.ts";
import type { KeeperSource } from "./keeperSource.ts";
import { customers, jobs } from "./shopLists.ts";
import type { TypedDraft } from "./typedDrafts.ts";

/** Where a job comes from and how it is kept. */
export function jobSource(jobId: string): KeeperSource<Job, JobFields> {
  return {
    key: `job.${jobId}`,
    load: () => ask(routes.job, { params: { jobId } }),
    save: (body, ifMatch) => ask(routes.changeJob, { params: { jobId }, body, ifMatch }),
    concerns: (change) => change.kind === "job" && change.id === jobId,
    known: () => jobs.store.get().items.find(({ id }) => id === jobId),
    kept: (job) => jobs.put(job),
  };
}

/** Where a customer comes from and how they are kept. */
export function customerSource(customerId: string): KeeperSource<Customer, CustomerFields> {
  return {
    key: `customer.${customerId}`,
    load: () => ask(routes.customer, { params: { customerId } }),
    save: (body, ifMatch) => ask(routes.changeCustomer, { params: { customerId }, body, ifMatch }),
    concerns: (change) =>
      (change.kind === "customer" && change.id === customerId) ||
      (change.kind === "erasure" && change.customerId === customerId),
    known: () => customers.store.get().items.find(({ id }) => id === customerId),
    kept: (customer) => customers.put(customer),
  };
}

/** Returns the record that typing waits for, or undefined where only its own page can send it. */
export function sourceOfDraft({
  record,
  id,
}: Pick<TypedDraft, "record" | "id">): ReturnType<typeof jobSource> | ReturnType<typeof customerSource> | undefined {
  if (record === "settings") return undefined;
  return record === "job" ? jobSource(id) : customerSource(id);
}
