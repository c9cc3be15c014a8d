import { type Problem, shown } from "@tidewright/design";
import { conflict, done, invalid, missing } from "../outcome.ts";
import { type Account, type AccountFields, type AccountWithHash, type AuditAbout, accountRoles } from "../records.ts";
import type { Sql } from "../sql/sqlDatabase.ts";
import type { AccountsPart } from "../store.ts";
import { addAudit } from "./audit.ts";
import { byProblems, idProblems, textProblems } from "./checks.ts";
import type { Context } from "./context.ts";
import { searchText } from "./searchText.ts";

type Row = Omit<AccountWithHash, "disabled"> & { disabled: number };

const columns = `accounts.id, name, role, password_hash AS "passwordHash", disabled, version,
  accounts.created_at AS "createdAt", updated_at AS "updatedAt"`;

/** Accounts: who may sign in, and as what. */
export function accountsPart(context: Context): AccountsPart {
  const { database, limits } = context;
  const problemsOf = (fields: AccountFields): Problem[] => {
    const problems = [
      ...(fields.name === undefined ? [] : textProblems("/name", fields.name, limits.nameLength)),
      ...(fields.passwordHash === undefined ? [] : textProblems("/passwordHash", fields.passwordHash, 1000)),
    ];
    if (fields.role !== undefined && !accountRoles.includes(fields.role)) {
      problems.push({
        path: "/role",
        message: `${shown(fields.role)} is no role`,
        value: fields.role,
        fix: `write one of ${accountRoles.join(", ")}`,
      });
    }
    return problems;
  };
  const taken = (name: string) =>
    invalid([{ path: "/name", message: "is the name of another account", value: name, fix: "choose another name" }]);

  return {
    create: async ({ id = context.newId(), onlyFirst = false, ...fields }, by) => {
      const problems = [...problemsOf(fields), ...idProblems("/id", id), ...byProblems(by)];
      if (problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        if (onlyFirst && (await sql.rows("SELECT id FROM accounts LIMIT 1")).length > 0) {
          return invalid([{ path: "", message: "there is an account already", fix: "ask its owner for one" }]);
        }
        const kept = await sql.change(
          "INSERT INTO accounts (id, name, name_key, role, password_hash, disabled, version, created_at, updated_at) VALUES (?, ?, ?, ?, ?, 0, 1, ?, ?) ON CONFLICT DO NOTHING",
          [id, fields.name, nameKey(fields.name), fields.role, fields.passwordHash, by.at, by.at],
        );
        if (kept === 0) return taken(fields.name);
        await addAudit(context, sql, by, "create", ["account", id], {
          about: { name: fields.name, role: fields.role },
        });
        return done((await findAccount(sql, id))!);
      });
      if (outcome.ok) context.announce({ kind: "account", id });
      return outcome;
    },
    list: async () =>
      (await database.read.rows<Row>(`SELECT ${columns} FROM accounts ORDER BY name_key`)).map((row) =>
        withoutHash(asAccount(row)),
      ),
    find: (id) => findAccount(database.read, id),
    findByName: async (name) => {
      const [row] = await database.read.rows<Row>(`SELECT ${columns} FROM accounts WHERE name_key = ?`, [
        nameKey(name),
      ]);
      return row && asAccount(row);
    },
    update: async (id, expectedVersion, fields, by) => {
      const problems = [...problemsOf(fields), ...byProblems(by)];
      if (problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        const [row] = await sql.rows<Row>(`SELECT ${columns} FROM accounts WHERE id = ?`, [id]);
        if (!row) return missing("account", id);
        const known = asAccount(row);
        const next = { ...known, ...fields };
        if (known.version !== expectedVersion) return conflict(withoutHash(known));
        const others = await sql.rows(
          "SELECT id FROM accounts WHERE role = 'owner' AND disabled = 0 AND id <> ? LIMIT 1",
          [id],
        );
        if (others.length === 0 && known.role === "owner" && (next.role !== "owner" || next.disabled)) {
          return invalid([
            {
              path: next.disabled ? "/disabled" : "/role",
              message: "this is the last owner, and nobody else could make another",
              fix: "make another account an owner first",
            },
          ]);
        }
        const namesakes = await sql.rows("SELECT id FROM accounts WHERE name_key = ? AND id <> ?", [
          nameKey(next.name),
          id,
        ]);
        if (namesakes.length > 0) return taken(next.name);
        const changed = await sql.change(
          "UPDATE accounts SET name = ?, name_key = ?, role = ?, password_hash = ?, disabled = ?, version = version + 1, updated_at = ? WHERE id = ? AND version = ?",
          [
            next.name,
            nameKey(next.name),
            next.role,
            next.passwordHash,
            next.disabled ? 1 : 0,
            by.at,
            id,
            expectedVersion,
          ],
        );
        if (changed === 0) return conflict((await findAccount(sql, id)) ?? withoutHash(known));
        if (next.disabled || next.role !== known.role || next.passwordHash !== known.passwordHash) {
          await sql.change("DELETE FROM sessions WHERE account_id = ?", [id]);
        }
        await addAudit(context, sql, by, "update", ["account", id], { about: aboutChange(known, next) });
        return done((await findAccount(sql, id))!);
      });
      if (outcome.ok) context.announce({ kind: "account", id });
      return outcome;
    },
  };
}

/** What became of an account, in words that a reader's language has; of a password only that it is another one. */
const aboutChange = (known: AccountWithHash, next: AccountWithHash): AuditAbout => ({
  name: next.name,
  ...(next.name === known.name ? {} : { was: known.name }),
  ...(next.role === known.role ? {} : { role: next.role }),
  ...(next.passwordHash === known.passwordHash ? {} : { password: "new" }),
  ...(next.disabled === known.disabled ? {} : { access: next.disabled ? "shut" : "open" }),
});

const nameKey = (name: string): string => searchText(name).trim();

async function findAccount(sql: Sql, id: string): Promise<Account | undefined> {
  const [row] = await sql.rows<Row>(`SELECT ${columns} FROM accounts WHERE id = ?`, [id]);
  return row && withoutHash(asAccount(row));
}

const asAccount = (row: Row): AccountWithHash => ({ ...row, disabled: row.disabled !== 0 });

const withoutHash = ({ passwordHash: _, ...account }: AccountWithHash): Account => account;
