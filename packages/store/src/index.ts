/** Where a shop's work is kept: customers, jobs, designs with their whole history, files and settings. */

export { restore } from "./backup/restore.ts";
export { isDatabaseUrl, openStore, type StoreOptions } from "./openStore.ts";
export type { Outcome, Refusal } from "./outcome.ts";
export type { Limits } from "./parts/checks.ts";
export * from "./records.ts";
export * from "./store.ts";
export { StoreFailure, type StoreFailureCode } from "./storeFailure.ts";
