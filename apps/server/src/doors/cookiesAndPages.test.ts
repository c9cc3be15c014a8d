import { describe, expect, it } from "vitest";
import { firstOwnerToken } from "./firstOwnerToken.ts";
import { isLoopback } from "./isLoopback.ts";
import { foreignPage } from "./ownPages.ts";
import { setCookie, tokenOf } from "./sessionCookie.ts";

const token = "A".repeat(43);

describe("a session's cookie", () => {
  it("is for no script, no foreign page and, behind TLS, no plain connection and no other host", () => {
    expect(setCookie(token, false)).toBe(`tidewright=${token}; Path=/; HttpOnly; SameSite=Strict; Max-Age=2592000`);
    expect(setCookie(token, true)).toBe(
      `__Host-tidewright=${token}; Path=/; HttpOnly; SameSite=Strict; Secure; Max-Age=2592000`,
    );
  });

  it("is read under its one name, once, and only where it could be a session", () => {
    expect(tokenOf(`a=b; tidewright=${token}`, false)).toBe(token);
    expect(tokenOf(`tidewright=${token}`, true)).toBeUndefined();
    expect(tokenOf(`xtidewright=${token}`, false)).toBeUndefined();
    expect(tokenOf(`tidewright=${token}; tidewright=${"B".repeat(43)}`, false)).toBeUndefined();
    expect(tokenOf("tidewright=' OR 1=1 --", false)).toBeUndefined();
    expect(tokenOf(undefined, false)).toBeUndefined();
  });
});

describe("a request that changes something", () => {
  const own = {
    method: "POST",
    host: "shop.example:8080",
    origin: "http://shop.example:8080",
    secFetchSite: "same-origin",
    mark: "1",
  };
  it("is taken from the server's own pages and from programs that are no browser", () => {
    expect(foreignPage(own, false)).toBeUndefined();
    expect(foreignPage({ ...own, origin: undefined, secFetchSite: undefined }, false)).toBeUndefined();
    expect(foreignPage({ ...own, host: "shop.example", origin: "https://shop.example" }, true)).toBeUndefined();
    expect(foreignPage({ ...own, host: "shop.example:443", origin: "https://shop.example" }, true)).toBeUndefined();
  });

  it("is refused without the mark, from another origin, port or scheme, and from a page without one", () => {
    for (const method of ["POST", "PUT", "PATCH", "DELETE"]) {
      expect(foreignPage({ ...own, method, mark: undefined }, false)).toBeDefined();
    }
    for (const origin of [
      "http://evil.example",
      "http://shop.example",
      "http://shop.example:80800",
      "https://shop.example:8080",
      "http://shop.example:8080.evil.example",
      "null",
      "",
    ]) {
      expect({ origin, why: foreignPage({ ...own, origin }, false) }).toMatchObject({ why: /origin/ });
    }
    for (const secFetchSite of ["cross-site", "same-site", "anything"]) {
      expect(foreignPage({ ...own, secFetchSite }, false)).toMatch(/site/);
      expect(foreignPage({ ...own, method: "GET", origin: undefined, secFetchSite }, false)).toMatch(/site/);
    }
    expect(foreignPage({ ...own, host: undefined }, false)).toMatch(/origin/);
  });
});

it("the first owner's secret fits once, and another start has another", () => {
  const [first, second] = [firstOwnerToken(), firstOwnerToken()];
  expect(first.secret).toMatch(/^[\w-]{32}$/);
  expect(first.fits(second.secret)).toBe(false);
  expect(first.fits("")).toBe(false);
  expect(first.fits(first.secret)).toBe(true);
  first.spend();
  expect(first.fits(first.secret)).toBe(false);
});

it("this machine's own addresses are told from those that only look like it", () => {
  for (const own of ["127.0.0.1", "127.8.9.10", "::1", "[::1]", "::ffff:127.0.0.1", "localhost"]) {
    expect({ own, is: isLoopback(own) }).toEqual({ own, is: true });
  }
  for (const other of ["0.0.0.0", "::", "192.168.1.20", "10.0.0.1", "127.0.0.1.evil.example", "localhost.evil", ""]) {
    expect({ other, is: isLoopback(other) }).toEqual({ other, is: false });
  }
  expect(isLoopback(undefined)).toBe(false);
});
