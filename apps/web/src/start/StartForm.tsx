import type { ShopGround, StartDefault } from "@tidewright/advice";
import { type AnimalGroup, animalGroups, type TypedQuantity } from "@tidewright/design";
import type { MessageKey } from "@tidewright/words";
import { typedText } from "../format/quantityText.ts";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import { bareUnit, defaultCurrency, type Said } from "./answersOf.ts";
import { type Draft, type TypedKey, type TypedQuestion, typedQuestions } from "./draft.ts";
import { ChoiceAnswer, TypedAnswer, Why } from "./StartFields.tsx";
import type { Made } from "./useFirstDesign.ts";
import { animalsText } from "./valueText.ts";

interface Props {
  readonly draft: Draft;
  readonly said: Said;
  readonly made: Made | undefined;
  /** What the shop has said once for all its jobs. */
  readonly shop: ShopGround;
  /** What the job is called while nobody names it. */
  readonly ownName: string | undefined;
  /** The job is there already: it needs no name. */
  readonly inJob: boolean;
  onChange(change: Partial<Draft>): void;
}

/** The questions, step by step on one sheet. */
export function StartForm({ draft, said, made, shop, ownName, inJob, onChange }: Props) {
  const words = useWords();
  const format = useFormat();
  const { say } = words;
  const assumedFor = (question: string) => made?.defaults.find((entry) => entry.question === question);
  const typed = (name: TypedKey, label: MessageKey, hint?: MessageKey) => {
    const { path, dimension }: TypedQuestion = typedQuestions[name];
    const assumed = assumedFor(path.replace(/\/[01]$/, ""));
    return (
      <TypedAnswer
        id={idOf(path)}
        label={say(label)}
        text={draft.typed[name] ?? ""}
        {...(dimension === undefined
          ? {}
          : {
              unit:
                dimension === "time"
                  ? say("start.years")
                  : unitText(bareUnit(dimension, format.unitOf, shop.currency ?? defaultCurrency)),
            })}
        placeholder={
          // The document's pipe holds the rise as well; sideways it is a hand's breadth or two.
          name === "horizontal"
            ? format(0.3, "length")
            : (placeholderOf(name, assumed, made, format.decimalSign) ?? optional(name))
        }
        assumed={assumed}
        {...(hint === undefined ? {} : { hint: say(hint) })}
        problem={said.problems[name]}
        onText={(text) => onChange({ typed: { ...draft.typed, [name]: text } })}
      />
    );
  };
  const optional = (name: TypedKey) => (name === "budget" || name === "sound" ? say("start.noLimit") : "");
  const step = (i: number, title: MessageKey) => (
    <h2 id={`start-step-${i}`} tabIndex={-1}>
      <span className="step-number" aria-hidden="true">
        {i}
      </span>
      {say(title)}
    </h2>
  );
  const animals = draft.animals.length > 0 ? draft.animals : (["mixedReef"] as const);
  const animalsWhy = assumedFor("/animals");
  return (
    <>
      <section className="start-step" aria-labelledby="start-step-1">
        {step(1, "start.step.tank")}
        <div className="start-columns">
          {typed("length", "start.tank.length")}
          {typed("width", "start.tank.width")}
          {typed("height", "start.tank.height")}
          {typed("volume", "start.tank.volume")}
        </div>
      </section>

      <section className="start-step" aria-labelledby="start-step-2">
        {step(2, "start.step.life")}
        <fieldset className="start-choice" data-assumed={draft.animals.length === 0 ? "" : undefined}>
          <legend className="field-label">{say("start.animals")}</legend>
          <div className="start-options">
            {animalGroups.map((group) => (
              <label key={group} className="start-option">
                <input
                  type="checkbox"
                  id={group === animalGroups[0] ? idOf("/animals") : undefined}
                  checked={animals.some((each) => each === group)}
                  onChange={(event) => onChange({ animals: toggled(draft.animals, group, event.target.checked) })}
                />
                <span>{animalsText(group, words)}</span>
              </label>
            ))}
          </div>
          {animalsWhy ? <Why assumed={animalsWhy} /> : null}
        </fieldset>
      </section>

      <section className="start-step" aria-labelledby="start-step-3">
        {step(3, "start.step.overflow")}
        <ChoiceAnswer
          legend={say("start.glass")}
          name="glass"
          value={draft.glass ?? "drill"}
          assumed={draft.glass === undefined}
          choices={(["drill", "drilled", "keep"] as const).map((value) => ({
            value,
            label: say(`start.glass.${value}`),
          }))}
          onChoose={(glass) => onChange({ glass })}
        />
        {draft.glass === "drilled" ? (
          <div className="start-columns">
            {typed("holesCount", "start.holes.count")}
            {typed("holesDiameter", "start.holes.diameter")}
          </div>
        ) : null}
        <ChoiceAnswer
          legend={say("start.drains")}
          name="drains"
          value={draft.drains ?? "three"}
          assumed={draft.drains === undefined}
          why={assumedFor("/overflow/drains")}
          choices={(["three", "two", "one"] as const).map((value) => ({ value, label: say(`start.drains.${value}`) }))}
          onChoose={(drains) => onChange({ drains })}
        />
      </section>

      <section className="start-step" aria-labelledby="start-step-4">
        {step(4, "start.step.stand")}
        <div className="start-columns">
          {typed("standHeight", "start.standHeight", "start.standHeight.hint")}
          {typed("horizontal", "start.returnWay.horizontal")}
          {typed("elbows", "start.returnWay.elbows")}
        </div>
        <ChoiceAnswer
          legend={say("start.sump")}
          name="sump"
          value={draft.sump}
          why={assumedFor("/sump")}
          assumed={draft.sump === "suggest"}
          choices={(["suggest", "given"] as const).map((value) => ({ value, label: say(`start.sump.${value}`) }))}
          onChoose={(sump) => onChange({ sump })}
        />
        {draft.sump === "given" ? (
          <div className="start-columns">
            {typed("sumpLength", "start.sump.length")}
            {typed("sumpWidth", "start.sump.width")}
            {typed("sumpHeight", "start.sump.height")}
          </div>
        ) : null}
        <ChoiceAnswer
          legend={say("start.topOff")}
          name="topOff"
          value={draft.topOff ?? "automatic"}
          assumed={draft.topOff === undefined}
          choices={(["automatic", "none"] as const).map((value) => ({ value, label: say(`start.topOff.${value}`) }))}
          onChoose={(topOff) => onChange({ topOff })}
        />
        {draft.topOff === "none" ? null : (
          <div className="start-columns">{typed("reservoir", "start.topOff.reservoir")}</div>
        )}
      </section>

      <section className="start-step" aria-labelledby="start-step-5">
        {step(5, "start.step.power")}
        <ChoiceAnswer
          legend={say("start.mains")}
          name="mains"
          value={draft.mains ?? (shop.us ? "120 V, 60 Hz" : "230 V, 50 Hz")}
          assumed={draft.mains === undefined}
          why={assumedFor("/power/voltage")}
          choices={(["230 V, 50 Hz", "120 V, 60 Hz"] as const).map((value) => ({ value, label: value }))}
          onChoose={(mains) => onChange({ mains })}
        />
        <div className="start-columns">
          {typed("budget", "start.budget")}
          {typed("sound", "start.sound")}
          {typed("turnoverLow", "start.turnover.low")}
          {typed("turnoverHigh", "start.turnover.high")}
          {typed("tariff", "start.tariff")}
          {typed("circuit", "start.circuit")}
          {typed("horizon", "start.horizon")}
        </div>
      </section>

      {inJob ? null : (
        <section className="start-step" aria-labelledby="start-step-6">
          {step(6, "start.step.job")}
          <div className="start-columns">
            <TypedAnswer
              id="start-name"
              label={say("start.job.name")}
              text={draft.name}
              placeholder={ownName ?? say("start.optional")}
              numeric={false}
              onText={(name) => onChange({ name })}
            />
            <TypedAnswer
              id="start-customer"
              label={say("start.job.customer")}
              text={draft.customer}
              placeholder={say("start.optional")}
              numeric={false}
              onText={(customer) => onChange({ customer })}
            />
          </div>
        </section>
      )}
    </>
  );
}

/** Id of the field that answers a question. */
export function idOf(question: string): string {
  return `start${question.replaceAll("/", "-")}`;
}

/** The default stands among the answers until something else is chosen with it or against it. */
function toggled(chosen: readonly AnimalGroup[], group: AnimalGroup, on: boolean): AnimalGroup[] {
  const others = chosen.filter((each) => each !== group);
  return on ? [...others, group] : others;
}

const unitText = (unit: string) => (unit === "1/h" ? "/h" : unit === "ft-in" ? "ft" : unit);

/** What counts while nothing is typed, as it would be typed. */
function placeholderOf(
  name: TypedKey,
  assumed: StartDefault | undefined,
  made: Made | undefined,
  sign: "." | ",",
): string | undefined {
  if (made === undefined || assumed === undefined) return undefined;
  const { dimension }: TypedQuestion = typedQuestions[name];
  if (name === "elbows") return String(assumed.value);
  const value =
    name === "turnoverLow" ? first(assumed, 0) : name === "turnoverHigh" ? first(assumed, 1) : assumed.value;
  if (dimension === undefined || typeof value !== "object" || value === null) return undefined;
  if (dimension === "time") return String((value as TypedQuantity).value);
  return typedText(value as TypedQuantity, dimension, sign);
}

const first = ({ value }: StartDefault, i: number): unknown => (Array.isArray(value) ? value[i] : undefined);
