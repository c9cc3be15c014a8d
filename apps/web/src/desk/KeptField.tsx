import { type ReactNode, useId, useLayoutEffect, useRef } from "react";
import { describedBy, FieldNote } from "../fields/FieldNote.tsx";
import { useWords } from "../words/useWords.ts";
import { beginHere } from "./beginHere.ts";
import type { KeptRecord } from "./recordKeeper.ts";
import { problemWords } from "./refusalWords.ts";

interface TextProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly onLeave?: () => void;
  readonly readOnly?: boolean;
  readonly lines?: number;
  readonly most?: number;
  readonly problem?: string | undefined;
  readonly hint?: string | undefined;
  readonly autoComplete?: string;
  readonly className?: string;
  /** Whether a sheet that opens around it begins here. */
  readonly begin?: boolean;
}

/** A line or some lines of text that keep themselves; lines grow with what is typed. */
export function KeptText(props: TextProps) {
  const { label, value, onChange, onLeave, readOnly = false, lines, most = 200, problem, hint, className = "" } = props;
  const id = useId();
  const area = useRef<HTMLTextAreaElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the height follows the text
  useLayoutEffect(() => {
    const element = area.current;
    if (element === null) return;
    element.style.height = "auto";
    element.style.height = `${element.scrollHeight + 2}px`;
  }, [value]);
  const shared = {
    id,
    value,
    readOnly,
    maxLength: most,
    onBlur: onLeave,
    autoComplete: props.autoComplete ?? "off",
    "aria-invalid": problem !== undefined,
    "aria-describedby": describedBy(id, hint, problem),
  };
  return (
    <div className={`field ${className}`}>
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      {lines === undefined ? (
        <input
          {...shared}
          className="text-input"
          type="text"
          ref={props.begin ? beginHere : undefined}
          onChange={(event) => onChange(event.target.value)}
        />
      ) : (
        <textarea
          {...shared}
          ref={area}
          className="text-input text-lines"
          rows={lines}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
      <FieldNote id={id} hint={hint} problem={problem} />
    </div>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly disabled?: boolean;
  readonly onChange: (value: string) => void;
  readonly children: ReactNode;
  readonly className?: string;
}

/** One word out of a list, with the browser's own list of choices. */
export function KeptChoice({ label, value, disabled = false, onChange, children, className = "" }: ChoiceProps) {
  const id = useId();
  return (
    <div className={`field ${className}`}>
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        className="select"
        value={value}
        disabled={disabled}
        onChange={(event) => onChange(event.target.value)}
      >
        {children}
      </select>
    </div>
  );
}

/** Whether everything typed is kept, in one short line. */
export function KeepingState({ kept }: { readonly kept: Pick<KeptRecord<never, object>, "state" | "problem"> }) {
  const words = useWords();
  const { state, problem } = kept;
  return (
    <p className="keeping-state" role="status" data-state={state}>
      {state === "refused" && problem !== undefined
        ? `${words.say("desk.keeping.refused")} ${problemWords(problem, words)}`
        : words.say(`desk.keeping.${state}`)}
    </p>
  );
}

interface ConflictsProps {
  readonly kept: Pick<KeptRecord<never, object>, "conflicts">;
  /** The name of a field, and its value in words. */
  readonly nameOf: (field: string) => string;
  readonly wordsOf?: (field: string, value: unknown) => string | undefined;
  readonly onChoose: (field: string, whose: "mine" | "theirs") => void;
}

/** Where two people changed the same field: both texts, and a choice. */
export function Conflicts({ kept, nameOf, wordsOf, onChoose }: ConflictsProps) {
  const { say } = useWords();
  if (kept.conflicts.length === 0) return null;
  const text = (field: string, value: unknown) =>
    wordsOf?.(field, value) ?? (value === null || value === "" ? say("desk.conflict.empty") : String(value));
  return (
    <section className="conflicts" aria-label={say("desk.conflict.title")}>
      <h2>{say("desk.conflict.title")}</h2>
      <p>{say("desk.conflict.explain")}</p>
      {kept.conflicts.map(({ field, mine, theirs }) => (
        <div className="conflict" key={field}>
          <h3>{nameOf(field)}</h3>
          <div className="conflict-side">
            <p className="quiet">{say("desk.conflict.mine")}</p>
            <p className="conflict-text">{text(field, mine)}</p>
            <button type="button" className="action" onClick={() => onChoose(field, "mine")}>
              {say("desk.conflict.keepMine")}
            </button>
          </div>
          <div className="conflict-side">
            <p className="quiet">{say("desk.conflict.theirs")}</p>
            <p className="conflict-text">{text(field, theirs)}</p>
            <button type="button" className="action" onClick={() => onChoose(field, "theirs")}>
              {say("desk.conflict.takeTheirs")}
            </button>
          </div>
        </div>
      ))}
    </section>
  );
}
