import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addressKey, byName, rateLimit } from "./rateLimit.ts";

const rule = { free: 5, firstWait: 30, longestWait: 900, forgottenAfter: 3600 };

describe("a limit on failures", () => {
  it("lets five through, then doubles the wait up to the longest", () => {
    const limit = rateLimit(rule);
    let now = 0;
    for (let failure = 0; failure < 5; failure++) expect(limit.attempt("mara", now)).toBe(0);
    const waits: number[] = [];
    for (let failure = 0; failure < 7; failure++) {
      const wait = limit.attempt("mara", now);
      waits.push(wait);
      expect(limit.attempt("mara", now + (wait - 1) * 1000)).toBeGreaterThan(0);
      now += wait * 1000;
      expect(limit.attempt("mara", now)).toBe(0);
    }
    expect(waits).toEqual([30, 60, 120, 240, 480, 900, 900]);
    expect(limit.attempt("jose", now)).toBe(0);
  });

  it("does not count attempts that it turns away, forgets after success and after long quiet", () => {
    const limit = rateLimit(rule);
    for (let failure = 0; failure < 5; failure++) limit.attempt("mara", 0);
    for (let again = 0; again < 100; again++) expect(limit.attempt("mara", 1000)).toBe(29);
    limit.succeeded("mara");
    expect(limit.attempt("mara", 1000)).toBe(0);
    for (let failure = 0; failure < 8; failure++) limit.attempt("mara", 1000);
    expect(limit.attempt("mara", 3_602_000)).toBe(0);
    expect(limit.attempt("mara", 3_602_000)).toBe(0);
  });

  it("takes a pardon back out of the count", () => {
    const limit = rateLimit(rule);
    for (let failure = 0; failure < 50; failure++) {
      expect(limit.attempt("mara", 0)).toBe(0);
      limit.pardon("mara");
    }
    expect(limit.size).toBe(0);
  });

  it("remembers no more keys than it was given room for, and the latest ones", () => {
    const limit = rateLimit(rule, 100);
    for (let key = 0; key < 1000; key++) for (let failure = 0; failure < 5; failure++) limit.attempt(`${key}`, key);
    expect(limit.size).toBe(100);
    expect(limit.attempt("999", 1000)).toBe(29 + 1);
    expect(limit.attempt("0", 1000)).toBe(0);
  });

  it("allows one name no more than 35 guesses a day, however they are spread", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 86_399 }), { maxLength: 3000 }), (seconds) => {
        const limit = rateLimit(byName);
        const let_in = seconds.sort((a, b) => a - b).filter((each) => limit.attempt("mara", each * 1000) === 0);
        // Analytic: 5 free, then 7 more after 30 + 60 + ... + 1920 = 3810 s in all, then one an hour.
        expect(let_in.length).toBeLessThanOrEqual(5 + 7 + Math.ceil((86_400 - 3810) / 3600));
      }),
      { numRuns: 30 },
    );
  });
});

it("an address counts by what one subscriber holds", () => {
  // RFC 5952, section 4 forms; addresses of RFC 3849 and RFC 5737.
  expect(addressKey("192.0.2.1")).toBe("192.0.2.1");
  expect(addressKey("2001:db8:1:2:aaaa::1")).toBe(addressKey("2001:db8:1:2:bbbb:cccc:dddd:eeee"));
  expect(addressKey("2001:db8:1:2::1")).not.toBe(addressKey("2001:db8:1:3::1"));
  expect(addressKey("fe80::1%eth0")).toBe(addressKey("fe80::2%eth1"));
  expect(addressKey("::1")).toBe("0:0:0:0::/64");
  expect(addressKey(undefined)).toBe("unknown");
});
