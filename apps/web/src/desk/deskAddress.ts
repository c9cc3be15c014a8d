/** Which screen of the desk an address means. */
export type DeskScreen =
  | { readonly screen: "jobs" }
  | { readonly screen: "job"; readonly id: string }
  | { readonly screen: "customers" }
  | { readonly screen: "customer"; readonly id: string }
  | { readonly screen: "pumps" }
  | { readonly screen: "pump"; readonly id: string }
  /** A sheet for a pump that the shop does not have yet, empty or a copy of another. */
  | { readonly screen: "newPump"; readonly from: string | undefined }
  | { readonly screen: "pumpTable" }
  | { readonly screen: "shop" }
  | { readonly screen: "people" };

/** Returns the screen of the desk that a hash means; what means nothing is the list of jobs.
 *  hash such as "#/jobs/abc"   -> DeskScreen
 *  Example: readDeskAddress("#/jobs/a%20b")  ->  {"screen":"job","id":"a b"} */
export function readDeskAddress(hash: string): DeskScreen {
  const [, place, id] = /^#\/(\w+)(?:\/([^/?]+))?/.exec(hash) ?? [];
  if (place === "jobs") return id ? { screen: "job", id: decoded(id) } : { screen: "jobs" };
  if (place === "customers") return id ? { screen: "customer", id: decoded(id) } : { screen: "customers" };
  if (place === "pumps") return id ? { screen: "pump", id: decoded(id) } : { screen: "pumps" };
  if (place === "newPump") return { screen: "newPump", from: id ? decoded(id) : undefined };
  if (place === "pumpTable" || place === "shop" || place === "people") return { screen: place };
  return { screen: "jobs" };
}

/** Returns the hash of a job's page.
 *  Example: jobHash("a b")  ->  "#/jobs/a%20b" */
export function jobHash(jobId: string): string {
  return `#/jobs/${encodeURIComponent(jobId)}`;
}

/** Returns the hash of a customer's page.
 *  Example: customerHash("k1")  ->  "#/customers/k1" */
export function customerHash(customerId: string): string {
  return `#/customers/${encodeURIComponent(customerId)}`;
}

/** Returns the hash of a pump's sheet.
 *  Example: pumpHash("ferrow-c40")  ->  "#/pumps/ferrow-c40" */
export function pumpHash(pumpId: string): string {
  return `#/pumps/${encodeURIComponent(pumpId)}`;
}

/** Returns the hash of a sheet for a new pump, empty or a copy of another.
 *  Example: newPumpHash("ferrow-c40")  ->  "#/newPump/ferrow-c40" */
export function newPumpHash(from?: string): string {
  return from === undefined ? "#/newPump" : `#/newPump/${encodeURIComponent(from)}`;
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
