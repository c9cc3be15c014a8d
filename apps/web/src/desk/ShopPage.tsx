import { type KeptSettings, routes, type ShopSettings } from "@tidewright/protocol";
import { type Dimension, unitsOf } from "@tidewright/units";
import { type Language, languages } from "@tidewright/words";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { FileChoice } from "../fields/FileChoice.tsx";
import { Problem } from "../fields/Problem.tsx";
import { mayRule } from "../state/mayRule.ts";
import { useSession } from "../state/session.ts";
import { changeSettings, type Theme, type UnitSystem, useSettings } from "../state/settings.ts";
import { useWords } from "../words/useWords.ts";
import { Backup } from "./Backup.tsx";
import { Currency } from "./Currency.tsx";
import { addressOf } from "./JobFiles.tsx";
import { Conflicts, KeepingState, KeptChoice, KeptText } from "./KeptField.tsx";
import type { KeeperSource } from "./keeperSource.ts";
import { Missing } from "./Missing.tsx";
import { PriceFactors } from "./PriceFactors.tsx";
import type { RecordKeeper } from "./recordKeeper.ts";
import { refusalWords } from "./refusalWords.ts";
import { knowSettings } from "./shopSettings.ts";
import { Tariff } from "./Tariff.tsx";
import { shownField, useKeeper, useKept } from "./useKeeper.ts";
import { useTitle } from "./useTitle.ts";

/** Settings with their version among them, as keepers want it. */
type FlatSettings = ShopSettings & { readonly version: number };
type Keeper = RecordKeeper<FlatSettings, ShopSettings>;

const flat = ({ settings, version }: KeptSettings): FlatSettings => ({ ...settings, version });
const source: KeeperSource<FlatSettings, ShopSettings> = {
  key: "settings",
  async load() {
    const answer = await ask(routes.settings, {});
    return answer.ok ? { ...answer, value: flat(answer.value) } : answer;
  },
  async save(change, version, record) {
    const { version: _version, ...present } = record;
    const answer = await ask(routes.changeSettings, { body: { ...present, ...change }, ifMatch: version });
    if (answer.ok) {
      knowSettings(answer.value);
      return { ...answer, value: flat(answer.value) };
    }
    if (answer.reason !== "refused" || answer.problem.status !== 412) return answer;
    const { current } = answer.problem as { current?: unknown };
    const known = current as KeptSettings | undefined;
    // What somebody else left, in the shape of this record.
    return known?.settings === undefined ? answer : { ...answer, problem: { ...answer.problem, current: flat(known) } };
  },
  concerns: (change) => change.kind === "settings",
};

/** What the shop says of itself, how this screen speaks, and the one file with everything in it. */
export function ShopPage() {
  const { say } = useWords();
  useTitle(say("desk.shop"));
  const { keeper, missing } = useKeeper(source);
  const { session } = useSession();
  const owns = mayRule(session);
  return (
    <article className="job-page">
      <h1 className="page-title">{say("desk.shop")}</h1>
      <ThisScreen />
      {keeper === undefined ? (
        <Missing missing={missing} notFound={say("desk.missing.job")} back="#/jobs" all={say("desk.allJobs")} />
      ) : (
        <ShopSheet keeper={keeper} readOnly={!owns} />
      )}
      {owns ? <Backup /> : null}
    </article>
  );
}

const systems: readonly UnitSystem[] = ["metric", "us", "imperial"];
const themes: readonly Theme[] = ["system", "light", "dark"];

/** Language, units and paper: choices of this screen alone. */
function ThisScreen() {
  const { say } = useWords();
  const language = useSettings((settings) => settings.language);
  const system = useSettings((settings) => settings.system);
  const theme = useSettings((settings) => settings.theme);
  return (
    <section className="desk-block">
      <h2>{say("desk.thisScreen")}</h2>
      <p className="quiet">{say("desk.thisScreenExplain")}</p>
      <div className="field-list field-columns">
        <KeptChoice
          label={say("fields.language")}
          value={language}
          onChange={(value) => changeSettings({ language: value as Language })}
        >
          {languages.map((each) => (
            <option key={each} value={each} lang={each}>
              {say(`fields.language.${each}`)}
            </option>
          ))}
        </KeptChoice>
        <KeptChoice
          label={say("fields.numbersIn")}
          value={system}
          onChange={(value) => changeSettings({ system: value as UnitSystem, own: {} })}
        >
          {systems.map((each) => (
            <option key={each} value={each}>
              {say(`fields.system.${each}`)}
            </option>
          ))}
        </KeptChoice>
        <KeptChoice
          label={say("desk.drawnOn")}
          value={theme}
          onChange={(value) => changeSettings({ theme: value as Theme })}
        >
          {themes.map((each) => (
            <option key={each} value={each}>
              {say(`desk.theme.${each}`)}
            </option>
          ))}
        </KeptChoice>
      </div>
    </section>
  );
}

/** Dimensions for which a shop's papers may have a unit of their own. */
const shopUnits = ["length", "volume", "flow", "head", "temperature"] as const satisfies readonly Dimension[];

function ShopSheet({ keeper, readOnly }: { readonly keeper: Keeper; readonly readOnly: boolean }) {
  const { say } = useWords();
  const kept = useKept(keeper);
  const units = shownField(kept, "units");
  const leave = () => void keeper.flush();
  const now = (change: Partial<ShopSettings>) => {
    keeper.change(change);
    leave();
  };
  return (
    <>
      <Conflicts
        kept={kept}
        nameOf={(field) => say(`desk.setting.${field as keyof ShopSettings}`)}
        wordsOf={(_, value) =>
          typeof value === "string" ? value || say("desk.conflict.empty") : JSON.stringify(value ?? "")
        }
        onChoose={(field, whose) => keeper.choose(field, whose)}
      />
      <section className="desk-block">
        <div className="block-head">
          <h2>{say("desk.onPapers")}</h2>
          <KeepingState kept={kept} />
        </div>
        <p className="quiet">{say(readOnly ? "desk.ownerOnly" : "desk.onPapersExplain")}</p>
        <div className="field-list field-columns">
          <KeptText
            label={say("desk.setting.name")}
            value={shownField(kept, "name")}
            readOnly={readOnly}
            autoComplete="organization"
            onChange={(name) => keeper.change({ name })}
            onLeave={leave}
          />
          <KeptText
            label={say("desk.setting.address")}
            value={shownField(kept, "address")}
            lines={3}
            most={1000}
            readOnly={readOnly}
            autoComplete="street-address"
            onChange={(address) => keeper.change({ address })}
            onLeave={leave}
          />
          <Logo
            fileId={shownField(kept, "logoFileId")}
            readOnly={readOnly}
            onLogo={(logoFileId) => now({ logoFileId })}
          />
        </div>
      </section>
      <section className="desk-block">
        <h2>{say("desk.money")}</h2>
        <div className="field-list field-columns">
          <Currency
            settings={{ currency: shownField(kept, "currency"), tariff: shownField(kept, "tariff") }}
            readOnly={readOnly}
            onCurrency={(change) => keeper.change(change)}
          />
          <Tariff
            tariff={shownField(kept, "tariff")}
            currency={shownField(kept, "currency")}
            readOnly={readOnly}
            onTariff={(tariff) => keeper.change({ tariff })}
          />
        </div>
        <PriceFactors
          factors={shownField(kept, "priceMultipliers")}
          readOnly={readOnly}
          onFactors={(priceMultipliers) => keeper.change({ priceMultipliers })}
        />
      </section>
      <section className="desk-block">
        <h2>{say("desk.setting.units")}</h2>
        <p className="quiet">{say("desk.shopUnitsExplain")}</p>
        <div className="field-list field-columns">
          {shopUnits.map((dimension) => (
            <KeptChoice
              key={dimension}
              label={say(`desk.unitOf.${dimension}`)}
              value={units[dimension] ?? ""}
              disabled={readOnly}
              onChange={(unit) => {
                const { [dimension]: _old, ...rest } = units;
                now({ units: unit === "" ? rest : { ...rest, [dimension]: unit } });
              }}
            >
              <option value="">{say("desk.unitFree")}</option>
              {unitsOf(dimension).map(({ symbol }) => (
                <option key={symbol} value={symbol}>
                  {symbol}
                </option>
              ))}
            </KeptChoice>
          ))}
        </div>
      </section>
    </>
  );
}

interface LogoProps {
  readonly fileId: string | null;
  readonly readOnly: boolean;
  readonly onLogo: (fileId: string | null) => void;
}

function Logo({ fileId, readOnly, onLogo }: LogoProps) {
  const words = useWords();
  const { say } = words;
  const [problem, setProblem] = useState<string>();
  const upload = async (file: File) => {
    const answer = await ask(routes.putFileOfShop, {
      query: { kind: "logo", name: file.name.slice(-200) },
      body: file,
    });
    setProblem(answer.ok ? undefined : refusalWords(answer, words));
    if (answer.ok) onLogo(answer.value.id);
  };
  return (
    <div className="field logo-field">
      <span className="field-label">{say("desk.setting.logoFileId")}</span>
      <div className="logo-line">
        {fileId === null ? (
          <span className="quiet">{say("desk.noLogo")}</span>
        ) : (
          <img className="shop-logo" src={addressOf({ id: fileId })} alt={say("desk.setting.logoFileId")} />
        )}
        {readOnly ? null : (
          <>
            <FileChoice
              label={say("desk.chooseLogo")}
              accept="image/png,image/jpeg,image/webp"
              onFiles={([file]) => {
                if (file) void upload(file);
              }}
            />
            {fileId === null ? null : (
              <button type="button" className="tool" onClick={() => onLogo(null)}>
                {say("desk.withoutLogo")}
              </button>
            )}
          </>
        )}
      </div>
      <Problem text={problem} />
    </div>
  );
}
