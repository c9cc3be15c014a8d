import { type CustomerDraft, emptyCustomer } from "./customerDraft.ts";

/** Under this name alone one draft was kept for all links: the next customer in the same browser saw it. */
const former = "tidewright.intake";

/** Returns the name that the draft of a link is kept under. What is kept on a device shall not open the link, so it is a
 *  hash of the token: of its 256 random bits the 64 here give nothing away, and links are told apart all the same.
 *  token of the link   -> name
 *  Source: FNV-1a, 64 bits; Fowler, Noll, Vo, IETF draft-eastlake-fnv. A page without TLS has no `crypto.subtle`.
 *  Example: draftKey("a")  ->  "tidewright.intake.af63dc4c8601ec8c" */
export function draftKey(token: string): string {
  let hash = 0xcbf29ce484222325n;
  for (const byte of new TextEncoder().encode(token)) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
  }
  return `${former}.${hash.toString(16).padStart(16, "0")}`;
}

/** Returns what was typed for a link before a reload, if anything; of what was sent the id alone, with nothing typed.
 *  token of the link; locale of the reader   -> CustomerDraft */
export function keptDraft(token: string, locale: string): CustomerDraft {
  const empty = emptyCustomer(locale);
  try {
    localStorage.removeItem(former);
  } catch {
    // A closed storage holds nothing either.
  }
  return { ...empty, ...read(token) };
}

/** Keeps what is typed for a link on this device until it is sent. */
export function keepDraft(token: string, draft: CustomerDraft): void {
  write(token, draft);
}

/** Takes what was typed off this device, once it is sent: the id alone stays, by which the shop knows it. */
export function keepSent(token: string, { id }: CustomerDraft): void {
  write(token, { id });
}

/** Takes a draft off this device, once its link is closed; what another page of this browser keeps for the link stays. */
export function forgetDraft(token: string, { id }: CustomerDraft): void {
  try {
    if (read(token).id === id) localStorage.removeItem(draftKey(token));
  } catch {
    // What cannot be reached cannot be taken away.
  }
}

function read(token: string): Partial<CustomerDraft> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(draftKey(token)) ?? "null");
    return typeof kept === "object" && kept !== null ? kept : {};
  } catch {
    return {};
  }
}

function write(token: string, kept: Partial<CustomerDraft>): void {
  try {
    localStorage.setItem(draftKey(token), JSON.stringify(kept));
  } catch {
    // A closed storage is no reason not to ask.
  }
}
