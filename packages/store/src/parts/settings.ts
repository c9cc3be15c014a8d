import { type Problem, shown } from "@tidewright/design";
import { conflict, done, invalid } from "../outcome.ts";
import type { KeptSettings, ShopSettings } from "../records.ts";
import type { Sql } from "../sql/sqlDatabase.ts";
import type { SettingsPart } from "../store.ts";
import { addAudit } from "./audit.ts";
import { byProblems, textProblems } from "./checks.ts";
import type { Context } from "./context.ts";

/** What a shop says of itself before anybody said anything: version 0. */
const untold: KeptSettings = {
  version: 0,
  settings: { name: "", address: "", logoFileId: null, currency: "EUR", tariff: null, units: {}, priceMultipliers: {} },
};

/** The settings of the shop. */
export function settingsPart(context: Context): SettingsPart {
  const { database } = context;
  return {
    read: () => readSettings(database.read),
    write: async (expectedVersion, settings, by) => {
      const problems = [...settingsProblems(settings, context.limits.notesLength), ...byProblems(by)];
      if (problems.length > 0) return invalid(problems);
      const outcome = await database.write(async (sql) => {
        const text = JSON.stringify(settings);
        const changed =
          expectedVersion === 0
            ? await sql.change(
                "INSERT INTO shop (id, settings, version, updated_at, updated_by) VALUES ('own', ?, 1, ?, ?) ON CONFLICT (id) DO NOTHING",
                [text, by.at, by.author],
              )
            : await sql.change(
                "UPDATE shop SET settings = ?, version = version + 1, updated_at = ?, updated_by = ? WHERE version = ?",
                [text, by.at, by.author, expectedVersion],
              );
        if (changed === 0) return conflict(await readSettings(sql));
        await addAudit(context, sql, by, "update", ["settings", "own"]);
        return done({ settings, version: expectedVersion + 1 });
      });
      if (outcome.ok) context.announce({ kind: "settings", version: outcome.value.version });
      return outcome;
    },
  };
}

async function readSettings(sql: Sql): Promise<KeptSettings> {
  const [row] = await sql.rows<{ settings: string; version: number }>("SELECT settings, version FROM shop");
  return row ? { settings: JSON.parse(row.settings) as ShopSettings, version: row.version } : untold;
}

function settingsProblems(settings: ShopSettings, longest: number): Problem[] {
  const problems = [
    ...textProblems("/name", settings.name, 200, { empty: true }),
    ...textProblems("/address", settings.address, longest, { empty: true }),
  ];
  if (!/^[A-Z]{3}$/.test(settings.currency)) {
    problems.push({
      path: "/currency",
      message: `${shown(settings.currency)} is no currency code`,
      value: settings.currency,
      fix: "write three capital letters, like EUR",
    });
  }
  if (settings.tariff !== null && !(Number.isFinite(settings.tariff.value) && settings.tariff.value >= 0)) {
    problems.push({
      path: "/tariff/value",
      message: "the price of energy must be zero or more",
      value: settings.tariff.value,
      fix: "write the price of one unit of energy",
    });
  }
  for (const [name, factor] of Object.entries(settings.priceMultipliers)) {
    if (Number.isFinite(factor) && factor > 0) continue;
    problems.push({
      path: `/priceMultipliers/${name.replaceAll("~", "~0").replaceAll("/", "~1")}`,
      message: "a factor on prices must be more than zero",
      value: factor,
      fix: "write 1 to leave the prices as they are",
    });
  }
  return problems;
}
