/** Seconds without a request after which a session is over. Source: NIST SP 800-63B, 4.2.3 (AAL2) asks for thirty minutes
 *  of idleness and twelve hours in all where much is at stake; at AAL1 (4.1.3) thirty days. A bench that stands in a shop
 *  all day gets twelve hours of idleness: whoever comes in the morning signs in. */
export const idleSeconds = 12 * 3600;
/** Seconds after which somebody signs in again in any case. Source: NIST SP 800-63B, 4.1.3 (AAL1). */
export const mostSeconds = 30 * 24 * 3600;

/** Returns the name of the session cookie.
 *  behindTls whether browsers reach the server by HTTPS   -> name; with TLS one that no other host or path can set
 *  Source: RFC 6265bis (draft-ietf-httpbis-rfc6265bis), 4.1.3.2, the "__Host-" prefix. */
function cookieName(behindTls: boolean): string {
  return behindTls ? "__Host-tidewright" : "tidewright";
}

/** Returns the header that gives a browser its session, or takes it away.
 *  token secret of the session, or undefined to end it; behindTls   -> Set-Cookie value
 *  Source: RFC 6265bis, 4.1; the cookie is for no script, no foreign page and, with TLS, no plain connection.
 *  Example: setCookie(undefined, false)  ->  "tidewright=; Path=/; HttpOnly; SameSite=Strict; Max-Age=0" */
export function setCookie(token: string | undefined, behindTls: boolean): string {
  const parts = [`${cookieName(behindTls)}=${token ?? ""}`, "Path=/", "HttpOnly", "SameSite=Strict"];
  if (behindTls) parts.push("Secure");
  parts.push(`Max-Age=${token === undefined ? 0 : mostSeconds}`);
  return parts.join("; ");
}

/** Returns the session's secret out of a Cookie header, or undefined where there is none that could be one.
 *  header text or undefined; behindTls   -> 43 letters of base64url
 *  Valid: a header with two cookies of the name answers none: somebody else set one of them. */
export function tokenOf(header: string | undefined, behindTls: boolean): string | undefined {
  const name = `${cookieName(behindTls)}=`;
  const values = (header ?? "")
    .split(";")
    .map((each) => each.trim())
    .filter((each) => each.startsWith(name))
    .map((each) => each.slice(name.length));
  return values.length === 1 && /^[\w-]{43}$/.test(values[0]!) ? values[0] : undefined;
}
