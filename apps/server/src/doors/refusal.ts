import type { Problem } from "@tidewright/design";
import type { ProblemDetails } from "@tidewright/protocol";

/** A request that is not done, with what its sender is told. Thrown low and answered once, at the server's edge. */
export class Refused extends Error {
  readonly details: ProblemDetails;
  readonly headers: Readonly<Record<string, string>>;
  constructor(details: ProblemDetails, headers: Readonly<Record<string, string>> = {}) {
    super(details.detail);
    this.details = details;
    this.headers = headers;
  }
}

const refused = (
  type: string,
  status: number,
  title: string,
  detail: string,
  more: { readonly problems?: Problem[]; readonly headers?: Readonly<Record<string, string>> } = {},
): Refused =>
  new Refused(
    {
      type: `urn:tidewright:problem:${type}`,
      title,
      status,
      detail,
      ...(more.problems ? { problems: more.problems } : {}),
    },
    more.headers,
  );

/** 401: an account would help. */
export const signInFirst = (detail = "sign in and ask again"): Refused =>
  refused("sign-in", 401, "Nobody is signed in", detail, { headers: { "WWW-Authenticate": "Session" } });

/** 403: this account, link or page may not. */
export const notAllowed = (detail: string): Refused => refused("not-allowed", 403, "This is not allowed", detail);

/** 404: there is no such thing, or none that the sender may know of. */
export const notThere = (detail: string): Refused => refused("not-found", 404, "There is nothing here", detail);

/** 429 with the seconds to wait. Source: RFC 6585, section 4; RFC 9110, 10.2.3. */
export const tooMany = (seconds: number, detail: string): Refused =>
  refused("too-many", 429, "Too many attempts", `${detail}; try again in ${seconds} s`, {
    headers: { "Retry-After": String(seconds) },
  });

/** 503: the machine has too much to do. */
export const tooBusy = (): Refused =>
  refused("too-busy", 503, "The server has too much to do", "try again in a few seconds", {
    headers: { "Retry-After": "5" },
  });

/** 422: what was sent cannot be worked with; every problem is named. */
export const badInput = (problems: readonly Problem[], status = 422, type = "bad-document"): Refused =>
  refused(
    type,
    status,
    "The input cannot be worked with",
    problems.map((each) => `${each.path || "it"} ${each.message}: ${each.fix}`).join("; ") || "no reason was given",
    { problems: [...problems] },
  );
