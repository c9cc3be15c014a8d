/** Which screen of the desk an address means. */
export type DeskScreen =
  | { readonly screen: "jobs" }
  | { readonly screen: "job"; readonly id: string }
  | { readonly screen: "customers" }
  | { readonly screen: "customer"; readonly id: string }
  | { readonly screen: "shop" }
  | { readonly screen: "people" };

/** Returns the screen of the desk that a hash means; what means nothing is the list of jobs.
 *  hash such as "#/jobs/abc"   -> DeskScreen
 *  Example: readDeskAddress("#/jobs/a%20b")  ->  {"screen":"job","id":"a b"} */
export function readDeskAddress(hash: string): DeskScreen {
  const [, place, id] = /^#\/(\w+)(?:\/([^/?]+))?/.exec(hash) ?? [];
  if (place === "jobs") return id ? { screen: "job", id: decoded(id) } : { screen: "jobs" };
  if (place === "customers") return id ? { screen: "customer", id: decoded(id) } : { screen: "customers" };
  if (place === "shop" || place === "people") return { screen: place };
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

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
