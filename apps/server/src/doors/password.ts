import { randomUUID } from "node:crypto";
import { type Algorithm, hash, verify } from "@node-rs/argon2";
import type { Problem } from "@tidewright/design";
import { commonPasswords } from "./commonPasswords.ts";

/** What one hash costs: memory in KiB, passes over it, lanes. */
export interface HashCost {
  readonly memoryCost: number;
  readonly timeCost: number;
  readonly parallelism: number;
}

/** Least cost that a server may be set to: argon2id with 19 MiB, two passes, one lane.
 *  Source: OWASP Cheat Sheet Series, Password Storage, section "Argon2id". */
export const leastCost: HashCost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** Cost of the hashes that are made: argon2id with 64 MiB, three passes, four lanes.
 *  Source: RFC 9106, section 4, second recommended option. */
export const usualCost: HashCost = { memoryCost: 65_536, timeCost: 3, parallelism: 4 };

// The package declares its algorithms as a const enum, which code compiled file by file cannot read; 2 is Argon2id.
const argon2id = 2 as Algorithm;

/** How many hashes are worked on at once: sixty sign-ins in one second must not take four gigabytes. */
const atOnce = 2;
/** How many may wait for that; more are turned away. */
const mostWaiting = 40;

/** A server that has too many passwords to check just now. */
export class TooBusy extends Error {}

/** What passwords are hashed and checked by. */
export interface Passwords {
  hash(password: string): Promise<string>;
  /** Whether a password is the one of a hash; without a hash the same work is done and the answer is no.
   *  `outdated`: it is, and the hash cost less than hashes do today. */
  check(password: string, known: string | undefined): Promise<{ readonly right: boolean; readonly outdated: boolean }>;
}

/** Returns what hashes and checks passwords at a cost.
 *  cost what one hash takes   -> Passwords; both throw TooBusy when more than forty wait
 *  Source: RFC 9106 for argon2id, section 3.1 for the salt of 16 bytes that the package draws; NIST SP 800-63B, 5.1.1.2
 *  for NFKC, so that the same letters typed on another keyboard are the same password. */
export function passwordsAt(cost: HashCost = usualCost): Passwords {
  const gate = gateOf(atOnce, mostWaiting);
  const options = { ...cost, algorithm: argon2id };
  const make = (password: string) => gate(() => hash(password.normalize("NFKC"), options));
  // Made at once, or the first name that is not there would be told from the others by its wait.
  const nobodys = make(randomUUID());
  return {
    hash: make,
    check: async (password, known) => {
      // Somebody who asks for a name that is not there waits as long as for one that is.
      const against = known ?? (await nobodys);
      const right = (await gate(() => verify(against, password.normalize("NFKC")))) && known !== undefined;
      return { right, outdated: right && isCheaper(against, cost) };
    },
  };
}

/** Returns whether a hash in PHC format cost less than a cost, or is of another algorithm.
 *  phc hash text; cost   -> true where it should be made anew
 *  Example: isCheaper("$argon2id$v=19$m=19456,t=2,p=1$c2FsdHNhbHQ$aGFzaA", leastCost)  ->  false */
export function isCheaper(phc: string, cost: HashCost): boolean {
  const found = /^\$argon2id\$v=19\$m=(\d+),t=(\d+),p=(\d+)\$/.exec(phc);
  return !found || Number(found[1]) < cost.memoryCost || Number(found[2]) < cost.timeCost;
}

/** Returns every problem of a new password: one that others would guess first.
 *  path where it stands in the body; next the password; name of its account   -> problems; none quotes the password
 *  Valid: length is the protocol's rule (10 to 200); no mix of signs is asked for.
 *  Source: NIST SP 800-63B (2017, updated 2020), 5.1.1.2: length over composition, refuse common and contextual ones. */
export function passwordProblems(path: string, next: string, name: string): Problem[] {
  const folded = next.normalize("NFKC").toLowerCase();
  const nameFolded = name.normalize("NFKC").toLowerCase().trim();
  const bare = folded.replace(/[^\p{L}\p{N}]/gu, "");
  const bareName = nameFolded.replace(/[^\p{L}\p{N}]/gu, "");
  // "maramaramara" and "mara2024!!" are the name as well.
  const rest = bareName.length > 2 ? bare.replaceAll(bareName, "") : bare;
  if (bareName !== "" && (bare === bareName || (rest !== bare && rest.length < 6))) {
    return [{ path, message: "is the name of the account, or little more", fix: "take several words that are not it" }];
  }
  if (new Set(folded).size < 4) {
    return [{ path, message: "repeats very few signs", fix: "take several words that do not belong together" }];
  }
  if (commonPasswords.has(folded) || commonPasswords.has(bare) || commonPasswords.has(bare.replace(/\d+$/, ""))) {
    return [
      {
        path,
        message: "is among the passwords that are tried first everywhere",
        fix: "take several words that do not belong together",
      },
    ];
  }
  return [];
}

function gateOf(most: number, longest: number): <Value>(work: () => Promise<Value>) => Promise<Value> {
  let running = 0;
  const waiting: (() => void)[] = [];
  return async (work) => {
    if (running >= most) {
      if (waiting.length >= longest) throw new TooBusy("too many passwords wait to be checked");
      // Whoever ends hands its place on, so that nobody new slips in between.
      await new Promise<void>((resolve) => waiting.push(resolve));
    } else running++;
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next) next();
      else running--;
    }
  };
}
