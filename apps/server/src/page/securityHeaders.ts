import type { MiddlewareHandler } from "hono";

/** What a page of ours may do: load its own files, and nothing foreign.
 *  Source: W3C Content Security Policy Level 3; OWASP Secure Headers Project. */
const contentPolicy = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "worker-src 'self'",
  "connect-src 'self'",
  "font-src 'self'",
  "manifest-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
  "form-action 'self'",
].join("; ");

const headers: Readonly<Record<string, string>> = {
  "Content-Security-Policy": contentPolicy,
  "X-Content-Type-Options": "nosniff",
  "X-Frame-Options": "DENY",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  // Standardized names alone: a browser complains of every other one in every page's console.
  // Source: W3C Permissions Policy, list of policy-controlled features (features.md), standardized features.
  "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=(), serial=(), midi=()",
  "X-Robots-Tag": "noindex, nofollow, noarchive",
};

/** Returns what puts the headers of a closed house on every answer that does not bring stricter ones of its own.
 *  behindTls whether browsers come by HTTPS, who are then to keep to it */
export function securityHeaders(behindTls: boolean): MiddlewareHandler {
  return async (context, next) => {
    await next();
    for (const [name, value] of Object.entries(headers)) {
      if (!context.res.headers.has(name)) context.res.headers.set(name, value);
    }
    // Over plain HTTP on this machine a promise of HTTPS would lock the browser out of every other local server.
    if (behindTls) context.res.headers.set("Strict-Transport-Security", "max-age=31536000");
    // What a shop keeps is for no cache but the screens' own; files and pages say otherwise themselves.
    if (context.req.path.startsWith("/api/") && !context.res.headers.has("Cache-Control")) {
      context.res.headers.set("Cache-Control", "no-store");
    }
  };
}
