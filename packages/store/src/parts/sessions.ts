import { done, missing } from "../outcome.ts";
import type { SessionsPart } from "../store.ts";
import { accountsPart } from "./accounts.ts";
import { addAudit } from "./audit.ts";
import type { Context } from "./context.ts";
import { newToken, tokenHash } from "./tokens.ts";

/** Sessions of accounts, each known by the hash of its token. */
export function sessionsPart(context: Context): SessionsPart {
  const { database } = context;
  const accounts = accountsPart(context);
  return {
    open: (accountId, expiresAt, by) =>
      database.write(async (sql) => {
        const [account] = await sql.rows("SELECT id FROM accounts WHERE id = ? AND disabled = 0", [accountId]);
        if (!account) return missing("account that may sign in", accountId);
        const token = newToken();
        await sql.change("INSERT INTO sessions (token_hash, account_id, created_at, expires_at) VALUES (?, ?, ?, ?)", [
          tokenHash(token),
          accountId,
          by.at,
          expiresAt,
        ]);
        await addAudit(context, sql, by, "signIn", ["account", accountId]);
        return done({ token });
      }),
    find: async (token, at) => {
      const [session] = await database.read.rows<{ accountId: string }>(
        `SELECT account_id AS "accountId" FROM sessions WHERE token_hash = ? AND expires_at > ?`,
        [tokenHash(token), at],
      );
      if (!session) return undefined;
      const account = await accounts.find(session.accountId);
      return account?.disabled === false ? account : undefined;
    },
    extend: (token, until, mostSeconds) =>
      database.write(async (sql) => {
        const [session] = await sql.rows<{ createdAt: string }>(
          `SELECT created_at AS "createdAt" FROM sessions WHERE token_hash = ?`,
          [tokenHash(token)],
        );
        if (!session) return;
        const most = new Date(Date.parse(session.createdAt) + mostSeconds * 1000).toISOString();
        await sql.change("UPDATE sessions SET expires_at = ? WHERE token_hash = ? AND expires_at < ?", [
          until < most ? until : most,
          tokenHash(token),
          until < most ? until : most,
        ]);
      }),
    close: (token) =>
      database.write(async (sql) => {
        await sql.change("DELETE FROM sessions WHERE token_hash = ?", [tokenHash(token)]);
      }),
    removeExpired: (at) => database.write((sql) => sql.change("DELETE FROM sessions WHERE expires_at <= ?", [at])),
  };
}
