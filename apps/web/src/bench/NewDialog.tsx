import { demoCatalogue } from "@tidewright/catalogue";
import { type AnimalGroup, animalGroups, checkDesign } from "@tidewright/design";
import type { Dimension, Quantity } from "@tidewright/units";
import { type FormEvent, useState } from "react";
import { type CounterAnswers, counterDesign } from "../counter/counterDesign.ts";
import { choicesOf, pipeChoices } from "../document/choices.ts";
import { readQuantity } from "../format/quantityText.ts";
import { openDesign, show, useBench } from "../state/bench.ts";
import { useSettings } from "../state/settings.ts";
import { isWideScreen } from "../state/useWideScreen.ts";
import { useWords } from "../words/useWords.ts";
import { counterCautions } from "./cautions.ts";
import { Sheet } from "./Sheet.tsx";

/** What is typed so far; text, so that nothing is lost while it does not make sense yet. */
interface Draft {
  readonly name: string;
  readonly length: string;
  readonly width: string;
  readonly height: string;
  readonly standHeight: string;
  readonly tariff: string;
  readonly drainSeries: string;
  readonly drains: CounterAnswers["drains"];
  readonly animals: AnimalGroup;
  readonly mains: CounterAnswers["mains"];
}

const metricStart: Draft = {
  name: "",
  length: "1200 mm",
  width: "500 mm",
  height: "550 mm",
  standHeight: "800 mm",
  tariff: "0.31 EUR/kWh",
  drainSeries: "pn16-32",
  drains: "three",
  animals: "mixedReef",
  mains: "230 V, 50 Hz",
};
const inchStart: Draft = {
  ...metricStart,
  length: "48 in",
  width: "20 in",
  height: "22 in",
  standHeight: "32 in",
  tariff: "0.17 USD/kWh",
  drainSeries: "sch40-1",
  mains: "120 V, 60 Hz",
};

const questions: readonly (readonly [
  key: "length" | "width" | "height" | "standHeight" | "tariff",
  label: string,
  dimension: Dimension,
])[] = [
  ["length", "Tank length", "length"],
  ["width", "Width, front to back", "length"],
  ["height", "Height of the glass", "length"],
  ["standHeight", "Stand: tank floor above the room's floor", "length"],
  ["tariff", "Price of a kilowatt-hour", "tariff"],
];

/** At the counter: tank, stand, drain, animals; two minutes to three pumps that fit. */
export function NewDialog() {
  const open = useBench((state) => state.dialog === "new");
  const inches = useSettings((settings) => settings.system !== "metric");
  return (
    <Sheet name="new" title="At the counter: a new system" open={open} onClose={() => show({ dialog: undefined })}>
      {open ? <CounterForm start={inches ? inchStart : metricStart} /> : null}
    </Sheet>
  );
}

function CounterForm({ start }: { readonly start: Draft }) {
  const { say } = useWords();
  const [draft, setDraft] = useState(start);
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const set = (change: Partial<Draft>) => setDraft({ ...draft, ...change });

  const finish = (event: FormEvent) => {
    event.preventDefault();
    const wrong: Record<string, string> = {};
    const read: Partial<Record<(typeof questions)[number][0], Quantity>> = {};
    for (const [key, , dimension] of questions) {
      const reading = readQuantity(draft[key], dimension, dimension === "tariff" ? "EUR/kWh" : "mm");
      if (reading.ok) read[key] = reading.quantity;
      else wrong[key] = reading.problem;
    }
    const { length, width, height, standHeight, tariff } = read;
    if (length && width && height && standHeight && tariff) {
      const design = counterDesign({ ...draft, length, width, height, standHeight, tariff });
      const checked = checkDesign(design, demoCatalogue);
      if (checked.ok) {
        openDesign(design, `${design.name}: pumps that fit are below`);
        show({ tab: "pumps", drawerOpen: true });
        // On one column the pumps lie below the fold, and they are what was asked for.
        if (!isWideScreen()) requestAnimationFrame(() => document.querySelector(".drawer")?.scrollIntoView());
        return;
      }
      for (const problem of checked.problems) {
        const key = questions.find(([name]) => problem.path === `/display/${name}`)?.[0] ?? "form";
        wrong[key] = `${problem.path}: ${problem.message}; ${problem.fix}`;
      }
    }
    setProblems(wrong);
  };

  return (
    <form onSubmit={finish} noValidate>
      <div className="field-list field-columns">
        <div className="field">
          <label className="field-label" htmlFor="new-name">
            Name of the job
          </label>
          <input
            id="new-name"
            className="text-input"
            value={draft.name}
            placeholder="At the counter"
            autoComplete="off"
            onChange={(event) => set({ name: event.target.value })}
          />
        </div>
        {questions.map(([key, label]) => (
          <div className="field" key={key} data-problem={problems[key] === undefined ? undefined : ""}>
            <label className="field-label" htmlFor={`new-${key}`}>
              {label}
            </label>
            <input
              id={`new-${key}`}
              className="figure-input"
              value={draft[key]}
              autoComplete="off"
              spellCheck={false}
              aria-invalid={problems[key] !== undefined}
              aria-describedby={problems[key] === undefined ? undefined : `new-${key}-problem`}
              onChange={(event) => set({ [key]: event.target.value })}
            />
            {problems[key] === undefined ? null : (
              <p className="field-problem" id={`new-${key}-problem`} role="alert">
                {problems[key]}
              </p>
            )}
          </div>
        ))}
        <Select
          label="Drain pipe"
          id="drainSeries"
          value={draft.drainSeries}
          choices={pipeChoices}
          onChange={(drainSeries) => set({ drainSeries })}
        />
        <Select
          label="Drains"
          id="drains"
          value={draft.drains}
          choices={[
            { value: "three", label: "Throttled siphon, open channel, dry emergency" },
            { value: "one", label: "One vented standpipe" },
          ]}
          onChange={(drains) => set({ drains: drains as Draft["drains"] })}
        />
        <Select
          label="Who lives in it"
          id="animals"
          value={draft.animals}
          choices={choicesOf(animalGroups)}
          onChange={(animals) => set({ animals: animals as AnimalGroup })}
        />
        <Select
          label="Mains"
          id="mains"
          value={draft.mains}
          choices={[
            { value: "230 V, 50 Hz", label: "230 V, 50 Hz" },
            { value: "120 V, 60 Hz", label: "120 V, 60 Hz" },
          ]}
          onChange={(mains) => set({ mains: mains as Draft["mains"] })}
        />
      </div>
      {problems["form"] === undefined ? null : (
        <p className="field-problem" role="alert">
          {problems["form"]}
        </p>
      )}
      <p className="quiet">
        Overflow, sump and lines begin with usual proportions (common practice, no source); each can be changed
        afterwards.
      </p>
      <aside className="cautions" aria-label="Take care">
        {counterCautions.map((key) => (
          <p key={key}>{say(key)}</p>
        ))}
      </aside>
      <p className="sheet-actions">
        <button type="submit" className="action action-strong">
          Show the pumps that fit
        </button>
      </p>
    </form>
  );
}

interface SelectProps {
  readonly label: string;
  readonly id: string;
  readonly value: string;
  readonly choices: readonly { readonly value: string; readonly label: string; readonly group?: string }[];
  onChange(value: string): void;
}

function Select({ label, id, value, choices, onChange }: SelectProps) {
  const groups = [...new Set(choices.map(({ group }) => group))];
  const options = (group: string | undefined) =>
    choices
      .filter((choice) => choice.group === group)
      .map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ));
  return (
    <div className="field">
      <label className="field-label" htmlFor={`new-${id}`}>
        {label}
      </label>
      <select id={`new-${id}`} className="select" value={value} onChange={(event) => onChange(event.target.value)}>
        {groups.map((group) =>
          group === undefined ? (
            options(group)
          ) : (
            <optgroup key={group} label={group}>
              {options(group)}
            </optgroup>
          ),
        )}
      </select>
    </div>
  );
}
