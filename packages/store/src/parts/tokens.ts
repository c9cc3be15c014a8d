import { createHash, randomBytes } from "node:crypto";

/** A new secret of 256 random bits, in letters that a URL and a cookie can carry. */
export const newToken = (): string => randomBytes(32).toString("base64url");

/** What is kept of a secret. It needs no slow hash: nobody guesses 256 random bits. */
export const tokenHash = (token: string): string => createHash("sha256").update(token).digest("hex");
