import { createHash, randomBytes, timingSafeEqual } from "node:crypto";

/** A secret that makes the first owner, once, until the server stops. */
export interface FirstOwnerToken {
  /** The secret, to be printed where only whoever started the server reads it. */
  readonly secret: string;
  /** Whether a text is the secret, and it was not used up. */
  fits(given: string): boolean;
  /** Makes it useless. */
  spend(): void;
}

/** Returns a new one-time secret of 192 random bits.
 *  -> FirstOwnerToken, which holds for this run of the server
 *  Source: own construction; OWASP ASVS 4.0.3, 2.3.1 for secrets that start an account. */
export function firstOwnerToken(): FirstOwnerToken {
  const secret = randomBytes(24).toString("base64url");
  let spent = false;
  return {
    secret,
    fits: (given) => !spent && sameText(given, secret),
    spend: () => {
      spent = true;
    },
  };
}

/** Returns whether two texts are the same, in a time that says nothing about where they differ.
 *  a, b   -> true or false
 *  Source: node:crypto, timingSafeEqual; digests make both sides equally long.
 *  Example: sameText("reef", "reef")  ->  true */
export function sameText(a: string, b: string): boolean {
  const digest = (text: string): Buffer => createHash("sha256").update(text).digest();
  return timingSafeEqual(digest(a), digest(b));
}
