/** What a request says of the page it comes from. */
export interface FromPage {
  readonly method: string;
  /** Host header, as the browser knows the server. */
  readonly host: string | undefined;
  readonly origin: string | undefined;
  readonly secFetchSite: string | undefined;
  /** X-Tidewright header. */
  readonly mark: string | undefined;
}

/** Returns why a request does not come from the server's own pages, or undefined where it does or may.
 *  from headers of the request; behindTls whether browsers reach the server by HTTPS   -> sentence or undefined
 *  Valid: every request that a browser of today sends. A program that is no browser sets what it likes, and has nobody's
 *  cookie to abuse.
 *  Source: OWASP Cheat Sheet Series, Cross-Site Request Forgery Prevention: "Custom Request Headers", "Fetch Metadata" and
 *  "Verifying Origin With Standard Headers", all three; W3C Fetch Metadata, 2.4; RFC 6454, 7. */
export function foreignPage(from: FromPage, behindTls: boolean): string | undefined {
  // A page of another server on this machine is "same-site": ports do not part sites.
  if (from.secFetchSite !== undefined && !["same-origin", "none"].includes(from.secFetchSite)) {
    return "the request comes from a page of another site";
  }
  if (from.origin !== undefined) {
    const own = `${behindTls ? "https" : "http"}://${from.host ?? ""}`;
    if (from.origin.toLowerCase() !== withoutUsualPort(own.toLowerCase())) {
      return "the request comes from a page of another origin";
    }
  }
  const reads = ["GET", "HEAD", "OPTIONS"].includes(from.method);
  return reads || from.mark !== undefined ? undefined : "a request that changes something must bear X-Tidewright";
}

/** Browsers leave the usual port out of an origin; some programs write it into Host. */
const withoutUsualPort = (origin: string): string =>
  origin.replace(/^(http:\/\/.*):80$/, "$1").replace(/^(https:\/\/.*):443$/, "$1");
