import { type Customer, type Job, routes, type StoreChange } from "@tidewright/protocol";
import { type Answered, ask } from "../api/ask.ts";
import { onChange } from "../keeping/changes.ts";
import { signedOut } from "../state/session.ts";
import { useStore } from "../state/store.ts";
import { deskCache } from "./deskCache.ts";
import { type KeptList, keptList } from "./keptList.ts";

/** An answer as it came; where the server wants somebody to sign in, the page turns to the door. */
export function heedDoor<Value>(answer: Answered<Value>): Answered<Value> {
  if (!answer.ok && answer.reason === "refused" && answer.problem.status === 401) signedOut();
  return answer;
}

/** Every job of the shop, as far as this page knows. */
export const jobs = keptList<Job>({
  name: "jobs",
  page: async (offset, limit) => heedDoor(await ask(routes.jobs, { query: { offset, limit } })),
  one: (jobId) => ask(routes.job, { params: { jobId } }),
  cache: deskCache,
});

/** Every customer of the shop, as far as this page knows. */
export const customers = keptList<Customer>({
  name: "customers",
  page: async (offset, limit) => heedDoor(await ask(routes.customers, { query: { offset, limit } })),
  one: (customerId) => ask(routes.customer, { params: { customerId } }),
  cache: deskCache,
});

export const useJobs = (): KeptList<Job> => useStore(jobs.store, (state) => state);
export const useCustomers = (): KeptList<Customer> => useStore(customers.store, (state) => state);

type Listener = (change: StoreChange | "everything") => void;
const listeners = new Set<Listener>();

/** Calls a listener at each change that the server tells of; "everything" after a time without word from it. */
export function onShopChange(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Time in which the line to the server opens for the first time [ms]. */
const settleTime = 3000;

/** Loads the lists and keeps them current with what others do; returns how to stop. */
export function watchShop(): () => void {
  void jobs.refresh();
  void customers.refresh();
  const stopLists = onShopChange(heard);
  const began = Date.now();
  // All windows of a browser share one line to the server. That it stands at the beginning is no news.
  const stopLine = onChange((told) => {
    if (told.kind !== "lineBack") for (const listener of listeners) listener(told);
    else if (Date.now() - began > settleTime) for (const listener of listeners) listener("everything");
  });
  const back = () => heard("everything");
  addEventListener("online", back);
  return () => {
    stopLists();
    stopLine();
    removeEventListener("online", back);
  };
}

let again: ReturnType<typeof setTimeout> | undefined;
/** Many changes at once, such as an import, are one question. */
function refreshSoon(): void {
  clearTimeout(again);
  again = setTimeout(() => {
    void jobs.refresh();
    void customers.refresh();
  }, 400);
}

function heard(change: StoreChange | "everything"): void {
  if (change === "everything" || change.kind === "erasure") refreshSoon();
  else if (change.kind === "job") {
    const known = jobs.store.get().items.find(({ id }) => id === change.id);
    // Our own change comes back as news too.
    if (known === undefined || known.version !== change.version) void jobs.refreshOne(change.id);
  } else if (change.kind === "design") void jobs.refreshOne(change.jobId);
  else if (change.kind === "customer") {
    void customers.refreshOne(change.id);
    // A job bears its customer's name.
    if (jobs.store.get().items.some(({ customerId }) => customerId === change.id)) refreshSoon();
  }
}
