import { unitLabel } from "@tidewright/units";
import type { MessageKey } from "@tidewright/words";
import { type ReactNode, useId } from "react";
import { useWords } from "../../words/useWords.ts";
import type { FieldProblem } from "./judgePump.ts";
import { type FigureName, measureOf, type PumpForm, type TextName } from "./pumpForm.ts";
import { useSheet } from "./sheetContext.ts";

/** Everything that is wrong or doubtful at one place, line by line. */
export function Told({ problems, id }: { readonly problems: readonly FieldProblem[]; readonly id: string }) {
  const { say } = useWords();
  if (problems.length === 0) return null;
  return (
    <span className="told" id={id}>
      {problems.map(({ severity, text }) => (
        <span key={`${severity} ${text}`} className={severity === "doubt" ? "field-doubt" : "field-problem"}>
          {severity === "doubt" ? say("pumps.doubt", { text }) : text}
        </span>
      ))}
    </span>
  );
}

interface FrameProps {
  readonly place: string;
  readonly label: string;
  readonly about?: MessageKey | undefined;
  readonly className?: string;
  readonly children: (shared: {
    readonly id: string;
    readonly "data-place": string;
    readonly "aria-invalid": boolean;
    readonly "aria-describedby": string | undefined;
  }) => ReactNode;
}

/** Label, control, and below it all that is to be said of it. */
function Frame({ place, label, about, className = "", children }: FrameProps) {
  const id = useId();
  const { say } = useWords();
  const { at, readOnly } = useSheet();
  const problems = at(place);
  const told = problems.length > 0;
  const hinted = about !== undefined && !readOnly;
  return (
    <div className={`field ${className}`}>
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      {children({
        id,
        "data-place": place,
        "aria-invalid": problems.some(({ severity }) => severity !== "doubt"),
        "aria-describedby":
          [told ? `${id}-told` : "", hinted ? `${id}-hint` : ""].filter(Boolean).join(" ") || undefined,
      })}
      <Told problems={problems} id={`${id}-told`} />
      {hinted ? (
        <span className="field-hint" id={`${id}-hint`}>
          {say(about)}
        </span>
      ) : null}
    </div>
  );
}

interface FigureProps {
  readonly name: FigureName;
  readonly about?: MessageKey;
  readonly optional?: boolean;
}

/** One number, with its unit in the label; another unit may be typed with it. */
export function FigureField({ name, about, optional = false }: FigureProps) {
  const { say } = useWords();
  const { form, change, readOnly } = useSheet();
  const { dimension, unit } = measureOf(name, form.units);
  return (
    <Frame place={name} label={say(`pumps.field.${name}`, { unit: unitLabel(unit, dimension) || unit })} about={about}>
      {(shared) => (
        <input
          {...shared}
          className="figure-input"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          readOnly={readOnly}
          placeholder={say(optional ? "pumps.optional" : "pumps.needed")}
          value={form[name].text}
          onChange={({ target }) => {
            const { value } = target;
            change((now) => ({ ...now, [name]: { ...now[name], text: value } }));
          }}
        />
      )}
    </Frame>
  );
}

interface TextProps {
  readonly name: TextName;
  readonly about?: MessageKey;
  readonly optional?: boolean;
  readonly lines?: number;
  readonly fixed?: boolean;
  readonly className?: string;
}

/** One line of text, or some. */
export function TextField({ name, about, optional = false, lines, fixed = false, className }: TextProps) {
  const { say } = useWords();
  const { form, change, readOnly } = useSheet();
  return (
    <Frame place={name} label={say(`pumps.field.${name}`)} about={about} {...(className ? { className } : {})}>
      {(shared) => {
        const input = {
          ...shared,
          value: form[name],
          readOnly: readOnly || fixed,
          autoComplete: "off",
          maxLength: lines === undefined ? 200 : 2000,
          placeholder: say(optional ? "pumps.optional" : "pumps.needed"),
          onChange: ({ target }: { readonly target: { readonly value: string } }) => {
            const { value } = target;
            change((now) => ({ ...now, [name]: value }));
          },
        };
        return lines === undefined ? (
          <input {...input} className="text-input" type="text" />
        ) : (
          <textarea {...input} className="text-input text-lines" rows={lines} />
        );
      }}
    </Frame>
  );
}

type ChoiceName = "control" | "controller" | "externalCooling" | "chart" | "sourceStatus";

interface ChoiceProps<Name extends ChoiceName> {
  readonly name: Name;
  readonly choices: readonly (readonly [PumpForm[Name], MessageKey])[];
}

/** One word out of a few. */
export function ChoiceField<Name extends ChoiceName>({ name, choices }: ChoiceProps<Name>) {
  const { say } = useWords();
  const { form, change, readOnly } = useSheet();
  return (
    <Frame place={name} label={say(`pumps.field.${name}`)}>
      {(shared) => (
        <select
          {...shared}
          className="select"
          disabled={readOnly}
          value={form[name]}
          onChange={({ target }) => {
            const { value } = target;
            change((now) => ({ ...now, [name]: value }));
          }}
        >
          {choices.map(([value, label]) => (
            <option key={value} value={value}>
              {say(label)}
            </option>
          ))}
        </select>
      )}
    </Frame>
  );
}
