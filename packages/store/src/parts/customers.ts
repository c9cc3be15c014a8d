import type { Problem } from "@tidewright/design";
import { conflict, done, invalid, missing } from "../outcome.ts";
import type { Customer, CustomerFields } from "../records.ts";
import type { Sql } from "../sql/sqlDatabase.ts";
import type { CustomersPart } from "../store.ts";
import { addAudit } from "./audit.ts";
import { byProblems, idProblems, pageOf, textProblems } from "./checks.ts";
import type { Context } from "./context.ts";
import { searchPatterns, searchText } from "./searchText.ts";

const columns = `id, name, contact, notes, version, created_at AS "createdAt", updated_at AS "updatedAt"`;

/** Customers: name, contact and notes. */
export function customersPart(context: Context): CustomersPart {
  const { database, limits } = context;
  const problemsOf = (fields: CustomerFields): Problem[] => [
    ...(fields.name === undefined ? [] : textProblems("/name", fields.name, limits.nameLength)),
    ...(fields.contact === undefined
      ? []
      : textProblems("/contact", fields.contact, limits.notesLength, { empty: true })),
    ...(fields.notes === undefined ? [] : textProblems("/notes", fields.notes, limits.notesLength, { empty: true })),
  ];
  return {
    create: async (fields, by) => {
      const id = fields.id ?? context.newId();
      const problems = [...problemsOf(fields), ...idProblems("/id", id), ...byProblems(by)];
      if (problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        const known = await findCustomer(sql, id);
        if (known) return conflict(known);
        const { name, contact = "", notes = "" } = fields;
        await sql.change(
          "INSERT INTO customers (id, name, contact, notes, search_text, version, created_at, updated_at) VALUES (?, ?, ?, ?, ?, 1, ?, ?)",
          [id, name, contact, notes, searchText(name, contact), by.at, by.at],
        );
        await addAudit(context, sql, by, "create", ["customer", id]);
        return done({ id, name, contact, notes, version: 1, createdAt: by.at, updatedAt: by.at });
      });
      if (outcome.ok) context.announce({ kind: "customer", id, version: 1 });
      return outcome;
    },
    find: (id) => findCustomer(database.read, id),
    search: async ({ text = "", limit = 100, offset = 0 } = {}) => {
      const patterns = searchPatterns(text);
      const where = patterns.map(() => "search_text LIKE ? ESCAPE '\\'").join(" AND ") || "1 = 1";
      const [counted] = await database.read.rows<{ total: number }>(
        `SELECT CAST(COUNT(*) AS INTEGER) AS total FROM customers WHERE ${where}`,
        patterns,
      );
      const items = await database.read.rows<Customer>(
        `SELECT ${columns} FROM customers WHERE ${where} ORDER BY search_text, id LIMIT ? OFFSET ?`,
        [...patterns, ...pageOf(limit, offset)],
      );
      return { items, total: counted?.total ?? 0 };
    },
    unusedSince: (at) =>
      database.read.rows<Customer>(
        `SELECT ${columns} FROM customers WHERE updated_at < ? AND NOT EXISTS
          (SELECT 1 FROM jobs WHERE jobs.customer_id = customers.id AND jobs.updated_at >= ?) ORDER BY updated_at, id`,
        [at, at],
      ),
    update: async (id, expectedVersion, fields, by) => {
      const problems = [...problemsOf(fields), ...byProblems(by)];
      if (problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        const known = await findCustomer(sql, id);
        if (!known) return missing("customer", id);
        const next = { ...known, ...fields, version: expectedVersion + 1, updatedAt: by.at };
        const changed = await sql.change(
          "UPDATE customers SET name = ?, contact = ?, notes = ?, search_text = ?, version = version + 1, updated_at = ? WHERE id = ? AND version = ?",
          [next.name, next.contact, next.notes, searchText(next.name, next.contact), by.at, id, expectedVersion],
        );
        if (changed === 0) return conflict((await findCustomer(sql, id)) ?? known);
        await addAudit(context, sql, by, "update", ["customer", id], {
          about: { fields: Object.keys(fields).join(", ") },
        });
        return done(next);
      });
      if (outcome.ok) context.announce({ kind: "customer", id, version: outcome.value.version });
      return outcome;
    },
  };
}

/** A customer by id, inside or outside a transaction. */
export async function findCustomer(sql: Sql, id: string): Promise<Customer | undefined> {
  return (await sql.rows<Customer>(`SELECT ${columns} FROM customers WHERE id = ?`, [id]))[0];
}
