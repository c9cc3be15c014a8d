/** How many failures are free, and how waits grow after them. */
export interface RateRule {
  /** Failures in a row before the first wait. */
  readonly free: number;
  /** First wait [s]; each further failure doubles it. */
  readonly firstWait: number;
  /** Longest wait [s]. */
  readonly longestWait: number;
  /** How long after the last failure all is forgotten [s]. */
  readonly forgottenAfter: number;
}

/** Five wrong passwords for one name, then 30 s, 1 min, 2 min ... up to an hour; forgotten a day after the last one. It
 *  never shuts an account for good, which would let a stranger lock the owner out.
 *  Source: NIST SP 800-63B, 5.2.2, which names waits of 30 seconds up to an hour. */
export const byName: RateRule = { free: 5, firstWait: 30, longestWait: 3600, forgottenAfter: 86_400 };
/** Twenty failures from one address: a shop's people share one. */
export const byAddress: RateRule = { free: 20, firstWait: 30, longestWait: 900, forgottenAfter: 3_600 };
/** Thirty links that open nothing from one address; nobody guesses 256 bits, so this only spares the machine. */
export const byLinkAddress: RateRule = { free: 30, firstWait: 10, longestWait: 300, forgottenAfter: 3_600 };
/** Ten questions that a door took from one address in ten minutes, whatever came of them: intakes. */
export const byIntake: RateRule = { free: 10, firstWait: 60, longestWait: 900, forgottenAfter: 600 };

/** Counts failures by key. */
export interface RateLimit {
  /** Seconds to wait before another attempt, 0 where none. Whoever is let in counts as failed until `succeeded`, so that
   *  a hundred attempts at once are not a hundred free ones. */
  attempt(key: string, now: number): number;
  /** Takes back what is held against a key. */
  succeeded(key: string): void;
  /** Takes back one attempt that said nothing about the secret. */
  pardon(key: string): void;
  /** Takes up what was held against a key before. */
  restore(key: string, held: Held): void;
  readonly size: number;
}

/** What is held against a key. */
export interface Held {
  readonly failures: number;
  /** Instant from which another attempt is let in [ms]. */
  readonly openAt: number;
  /** Instant of the last attempt [ms]. */
  readonly last: number;
}

type Kept = { -readonly [Key in keyof Held]: Held[Key] };

/** Returns a counter of failures with growing waits.
 *  rule free failures and waits; most keys that are remembered; changed told of every key and what is held against it
 *  from now on   -> RateLimit; instants in ms come from the caller
 *  Valid: one process; a restart forgets what nobody wrote down. Beyond `most` keys the one that failed longest ago is forgotten.
 *  Source: own construction; RFC 6585, section 4, for the answer 429 with Retry-After. */
export function rateLimit(
  rule: RateRule,
  most = 10_000,
  changed: (key: string, held: Held | undefined) => void = () => undefined,
): RateLimit {
  // A Map keeps the order of insertion: a key is put at its end whenever it fails, so the first one failed longest ago.
  const keys = new Map<string, Kept>();
  return {
    attempt: (key, now) => {
      const known = keys.get(key);
      const kept: Kept =
        known && now - known.last < rule.forgottenAfter * 1000 ? known : { failures: 0, openAt: 0, last: now };
      if (now < kept.openAt) return Math.ceil((kept.openAt - now) / 1000);
      kept.failures++;
      kept.last = now;
      const beyond = kept.failures - rule.free;
      // The exponent is held, or a thousand failures would make an infinite wait.
      const wait = beyond < 0 ? 0 : Math.min(rule.firstWait * 2 ** Math.min(beyond, 30), rule.longestWait);
      kept.openAt = now + wait * 1000;
      keys.delete(key);
      keys.set(key, kept);
      if (keys.size > most) keys.delete(keys.keys().next().value!);
      changed(key, { ...kept });
      return 0;
    },
    succeeded: (key) => {
      if (keys.delete(key)) changed(key, undefined);
    },
    pardon: (key) => {
      const kept = keys.get(key);
      if (!kept) return;
      kept.failures--;
      if (kept.failures < rule.free) kept.openAt = 0;
      if (kept.failures <= 0) keys.delete(key);
      changed(key, kept.failures <= 0 ? undefined : { ...kept });
    },
    restore: (key, held) => {
      keys.delete(key);
      keys.set(key, { ...held });
    },
    get size() {
      return keys.size;
    },
  };
}

/** Returns the key under which an address is counted: an IPv6 address by its first 64 bits, which one subscriber holds,
 *  an IPv4 address whole.
 *  address as a socket says it   -> key
 *  Valid: addresses as Node writes them; anything else is its own key.
 *  Source: RFC 6177, section 2 (a site gets a /64 or more); RFC 4291, section 2.5.5.2 for IPv4 inside IPv6.
 *  Example: addressKey("::ffff:192.0.2.7")  ->  "192.0.2.7"
 *  Example: addressKey("2001:db8:1:2:3:4:5:6")  ->  "2001:db8:1:2::/64"
 *  Example: addressKey("2001:db8::1")  ->  "2001:db8:0:0::/64" */
export function addressKey(address: string | undefined): string {
  if (address === undefined) return "unknown";
  const bare = address.replace(/%.*$/, "").toLowerCase();
  const mapped = /^::ffff:(\d{1,3}(?:\.\d{1,3}){3})$/.exec(bare);
  if (mapped) return mapped[1]!;
  if (!bare.includes(":")) return bare;
  const [head = "", tail] = bare.split("::");
  const before = head === "" ? [] : head.split(":");
  const after = tail === undefined || tail === "" ? [] : tail.split(":");
  const zeros = tail === undefined ? [] : Array<string>(Math.max(0, 8 - before.length - after.length)).fill("0");
  return `${[...before, ...zeros, ...after].slice(0, 4).join(":")}::/64`;
}
