import { conflict, done, invalid, missing } from "../outcome.ts";
import type { AuditAbout, CatalogueRow } from "../records.ts";
import type { Sql } from "../sql/sqlDatabase.ts";
import type { CataloguePart } from "../store.ts";
import { addAudit } from "./audit.ts";
import { byProblems, idProblems, jsonText } from "./checks.ts";
import type { Context } from "./context.ts";

type Row = Omit<CatalogueRow, "data"> & { data: string };

const columns = `kind, id, data, version, created_at AS "createdAt", updated_at AS "updatedAt"`;

/** The shop's own catalogue rows, by kind and id; what a row must hold is for the catalogue package to say. */
export function cataloguePart(context: Context): CataloguePart {
  const { database, limits } = context;
  return {
    list: async (kind) =>
      (await database.read.rows<Row>(`SELECT ${columns} FROM catalogue_rows WHERE kind = ? ORDER BY id`, [kind])).map(
        asRow,
      ),
    find: (kind, id) => findRow(database.read, kind, id),
    put: async (kind, id, expectedVersion, data, by) => {
      const json = jsonText("/data", data, limits.documentBytes);
      const problems = [
        ...("problem" in json ? [json.problem] : []),
        ...idProblems("/kind", kind),
        ...idProblems("/id", id),
        ...byProblems(by),
      ];
      if ("problem" in json || problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        // Version 0 stands for "not there yet", so that a first writer is told of another first writer.
        const changed =
          expectedVersion === 0
            ? await sql.change(
                "INSERT INTO catalogue_rows (kind, id, data, version, created_at, updated_at) VALUES (?, ?, ?, 1, ?, ?) ON CONFLICT (kind, id) DO NOTHING",
                [kind, id, json.text, by.at, by.at],
              )
            : await sql.change(
                "UPDATE catalogue_rows SET data = ?, version = version + 1, updated_at = ? WHERE kind = ? AND id = ? AND version = ?",
                [json.text, by.at, kind, id, expectedVersion],
              );
        const row = await findRow(sql, kind, id);
        if (!row) return missing(`catalogue row of kind "${kind}"`, id);
        if (changed === 0) return conflict(row);
        await addAudit(context, sql, by, "put", ["catalogue", `${kind}/${id}`], {
          about: { ...aboutRow(row), change: expectedVersion === 0 ? "new" : "changed" },
        });
        return done(row);
      });
      if (outcome.ok) context.announce({ kind: "catalogue", row: kind, id });
      return outcome;
    },
    remove: async (kind, id, expectedVersion, by) => {
      const outcome = await database.write(async (sql) => {
        const row = await findRow(sql, kind, id);
        if (!row) return missing(`catalogue row of kind "${kind}"`, id);
        const changed = await sql.change("DELETE FROM catalogue_rows WHERE kind = ? AND id = ? AND version = ?", [
          kind,
          id,
          expectedVersion,
        ]);
        if (changed === 0) return conflict(row);
        await addAudit(context, sql, by, "remove", ["catalogue", `${kind}/${id}`], { about: aboutRow(row) });
        return done(row);
      });
      if (outcome.ok) context.announce({ kind: "catalogue", row: kind, id });
      return outcome;
    },
  };
}

/** A row as people call it: what a maker prints on it. */
function aboutRow({ kind, data }: CatalogueRow): AuditAbout {
  const { maker, model } = (typeof data === "object" && data !== null ? data : {}) as Record<string, unknown>;
  const name = [maker, model].filter((each) => typeof each === "string" && each !== "").join(" ");
  return { kind, ...(name === "" ? {} : { name: name.slice(0, 400) }) };
}

async function findRow(sql: Sql, kind: string, id: string): Promise<CatalogueRow | undefined> {
  const [row] = await sql.rows<Row>(`SELECT ${columns} FROM catalogue_rows WHERE kind = ? AND id = ?`, [kind, id]);
  return row && asRow(row);
}

const asRow = (row: Row): CatalogueRow => ({ ...row, data: JSON.parse(row.data) as unknown });
