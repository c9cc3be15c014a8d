import type { PumpRow } from "@tidewright/catalogue";
import type { CatalogueRow } from "@tidewright/protocol";
import { type FormEvent, useCallback, useEffect, useMemo, useState } from "react";
import { Sheet as Dialog } from "../../bench/Sheet.tsx";
import { useFormat } from "../../format/useFormat.ts";
import { useSettings } from "../../state/settings.ts";
import { useWords } from "../../words/useWords.ts";
import { pumpHash } from "../deskAddress.ts";
import { refusalWords } from "../refusalWords.ts";
import { Clash } from "./Clash.tsx";
import { CurveGroup } from "./CurveGroup.tsx";
import { type FieldProblem, judgePump, mainsFor } from "./judgePump.ts";
import { ownPumps, pumpOf, putPump, tellNews } from "./ownPumps.ts";
import { emptyForm, formOf, type PumpForm, sameForm, shortName, unitsFor } from "./pumpForm.ts";
import { FirstGroups, LastGroups } from "./SheetGroups.tsx";
import { goTo, SheetProvider } from "./sheetContext.ts";
import { readDraft, writeDraft } from "./sheetDrafts.ts";

interface Props {
  /** The pump as it is kept, or what a new sheet begins with. */
  readonly pump: PumpRow | undefined;
  /** Version of the kept row; 0 where the pump is new. */
  readonly version: number;
  /** Where the sheet waits on this device while it is not saved. */
  readonly draft: string;
  readonly readOnly: boolean;
  /** Whose pump bears a short name already, other than this one. */
  readonly taken: (id: string) => "own" | "program" | undefined;
  /** The row as the server has it now: it may have moved on, or be gone. */
  readonly current: CatalogueRow | undefined;
}

type State =
  | { readonly is: "idle" | "saving" | "saved" }
  | { readonly is: "refused"; readonly why: string }
  /** Theirs undefined: somebody removed the pump. */
  | { readonly is: "clash"; readonly theirs: CatalogueRow | undefined };

/** A pump's data sheet: everything that is known of it, judged as it is typed, kept as a whole. */
export function PumpSheet({ pump, version, draft, readOnly, taken, current }: Props) {
  const words = useWords();
  const { say } = words;
  const format = useFormat();
  const system = useSettings((settings) => settings.system);
  const [waiting] = useState(() => (readOnly ? undefined : readDraft(draft)));
  // What is kept of the pump as far as this sheet knows: what was typed is made from it.
  const [base, setBase] = useState({ pump, version: waiting?.version ?? version });
  const begun = useCallback(
    (units: PumpForm["units"]) => (base.pump === undefined ? emptyForm(units) : formOf(base.pump, units, words)),
    [base.pump, words],
  );
  const [form, setForm] = useState<PumpForm>(() => waiting?.form ?? begun(unitsFor(format)));
  const [state, setState] = useState<State>({ is: "idle" });
  const [tried, setTried] = useState(false);
  const isNew = base.version === 0;
  const dirty = useMemo(() => !sameForm(form, begun(form.units)), [form, begun]);
  const judged = useMemo(
    () => judgePump(form, { words, format, mains: mainsFor(system), taken }),
    [form, words, format, system, taken],
  );

  const change = useCallback(
    (make: (form: PumpForm) => PumpForm) => {
      setForm((now) => withShortName(now, make(now), isNew));
      setState((now) => (now.is === "clash" ? now : { is: "idle" }));
    },
    [isNew],
  );
  // What is typed outlives the page, a dead battery and a refused save.
  useEffect(() => {
    if (!readOnly) writeDraft(draft, dirty ? { form, version: base.version } : undefined);
  }, [form, dirty, draft, readOnly, base.version]);
  // While nothing is typed here, what others change is shown at once.
  useEffect(() => {
    if (current === undefined || dirty || isNew || current.version === base.version) return;
    const theirs = pumpOf(current);
    if (theirs === undefined) return;
    setBase({ pump: theirs, version: current.version });
    setForm((now) => formOf(theirs, now.units, words));
  }, [current, dirty, isNew, base.version, words]);

  const errors = judged.problems.filter(({ severity }) => severity !== "doubt");
  const at = useCallback(
    (place: string): readonly FieldProblem[] =>
      judged.problems.filter((problem) => problem.place === place && (tried || problem.severity !== "missing")),
    [judged.problems, tried],
  );
  const save = async (over = base.version) => {
    setTried(true);
    if (errors.length > 0) {
      setState({ is: "refused", why: say("pumps.mend", { count: errors.length }) });
      goTo(firstOnSheet(errors));
      return;
    }
    setState({ is: "saving" });
    const answer = await putPump(judged.row, over);
    if (answer.ok) {
      writeDraft(draft, undefined);
      setBase({ pump: judged.row, version: answer.value.version });
      setForm((now) => formOf(judged.row, now.units, words));
      setState({ is: "saved" });
      setTried(false);
      if (isNew) {
        tellNews({ kind: "added", pump: judged.row });
        location.replace(pumpHash(judged.row.id));
      }
    } else if (answer.reason === "unreachable") setState({ is: "refused", why: say("pumps.unreachable") });
    else if (answer.problem.status === 412 || answer.problem.status === 404) {
      await ownPumps.refresh();
      setState({ is: "clash", theirs: ownPumps.store.get().items.find(({ id }) => id === judged.row.id) });
    } else setState({ is: "refused", why: `${say("pumps.notSaved")} ${refusalWords(answer, words)}` });
  };
  const takeTheirs = (theirs: PumpRow, theirVersion: number) => {
    setBase({ pump: theirs, version: theirVersion });
    setForm((now) => formOf(theirs, now.units, words));
    setState({ is: "idle" });
    setTried(false);
  };
  const letGo = () => {
    writeDraft(draft, undefined);
    location.hash = "#/pumps";
  };
  const sheet = useMemo(() => ({ form, readOnly, isNew, change, at }), [form, readOnly, isNew, change, at]);
  const settled = state.is !== "clash" && state.is !== "saving";
  const movedOn = settled && dirty && !isNew && current !== undefined && current.version !== base.version;
  return (
    <SheetProvider value={sheet}>
      <form
        className="pump-form"
        noValidate
        onSubmit={(event: FormEvent) => {
          event.preventDefault();
          if (!readOnly) void save();
        }}
      >
        {waiting !== undefined && dirty && state.is === "idle" ? (
          <p className="pump-note" role="status">
            {say("pumps.typedBefore")}
          </p>
        ) : null}
        {movedOn ? (
          <p className="pump-note pump-warn" role="status">
            {say("pumps.clash.elsewhere")}
          </p>
        ) : null}
        {state.is === "clash" ? (
          <Clash
            mine={judged.row}
            theirs={state.theirs}
            onMine={(over) => void save(over)}
            onTheirs={takeTheirs}
            onLetGo={letGo}
          />
        ) : null}
        <FirstGroups />
        <CurveGroup judged={judged} />
        <LastGroups />
        {readOnly ? null : (
          <Foot
            problems={judged.problems}
            state={state}
            dirty={dirty}
            isNew={isNew}
            onShow={() => {
              setTried(true);
              goTo(firstOnSheet(judged.problems));
            }}
            onDiscard={() => {
              setForm((now) => begun(now.units));
              setState({ is: "idle" });
              setTried(false);
            }}
          />
        )}
      </form>
    </SheetProvider>
  );
}

/** A new pump's short name follows maker and model until somebody writes one. */
function withShortName(before: PumpForm, after: PumpForm, isNew: boolean): PumpForm {
  if (!isNew || after.id !== before.id) return after;
  const follows = before.id === "" || before.id === shortName(before.maker, before.model);
  return follows ? { ...after, id: shortName(after.maker, after.model) } : after;
}

/** Which of these comes first on the page. */
function firstOnSheet(problems: readonly FieldProblem[]): string {
  const places = new Set(problems.map(({ place }) => place));
  for (const element of document.querySelectorAll<HTMLElement>("[data-place]")) {
    const place = element.dataset["place"] ?? "";
    // A problem of a whole table stands before its first cell.
    const table = /^curves\.\d+/.exec(place)?.[0];
    if (places.has(place) || (table !== undefined && places.has(table))) return place;
  }
  return problems[0]?.place ?? "";
}

interface FootProps {
  readonly problems: readonly FieldProblem[];
  readonly state: State;
  readonly dirty: boolean;
  readonly isNew: boolean;
  onShow(): void;
  onDiscard(): void;
}

/** What stands in the way of saving, and saving itself, always in sight. */
function Foot({ problems, state, dirty, isNew, onShow, onDiscard }: FootProps) {
  const { say } = useWords();
  const [asking, setAsking] = useState(false);
  const count = (severity: FieldProblem["severity"]) => problems.filter((one) => one.severity === severity).length;
  const [wrong, empty, doubts] = [count("error"), count("missing"), count("doubt")];
  const parts = [
    wrong > 0 ? say("pumps.toMend", { count: wrong }) : "",
    empty > 0 ? say("pumps.toFill", { count: empty }) : "",
    doubts > 0 ? say("pumps.doubts", { count: doubts }) : "",
  ].filter(Boolean);
  return (
    <footer className="pump-foot">
      <p className="pump-state" data-wrong={wrong > 0 ? "" : undefined}>
        {parts.length === 0 ? say("pumps.sound") : parts.join(" · ")}
        {parts.length === 0 ? null : (
          <button type="button" className="tool" onClick={onShow}>
            {say("pumps.showNext")}
          </button>
        )}
      </p>
      <p className="pump-said" role="status" data-state={state.is}>
        {state.is === "refused"
          ? state.why
          : state.is === "saving"
            ? say("pumps.saving")
            : dirty
              ? say("pumps.typed")
              : state.is === "saved"
                ? say("pumps.saved")
                : isNew
                  ? ""
                  : say("pumps.asKept")}
      </p>
      <div className="pump-hands">
        {dirty ? (
          <button type="button" className="tool" onClick={() => setAsking(true)}>
            {say("pumps.discard")}
          </button>
        ) : null}
        <button type="submit" className="action action-strong" disabled={state.is === "saving"}>
          {say("pumps.save")}
        </button>
      </div>
      <Dialog name="discard" title={say("pumps.discardTitle")} open={asking} onClose={() => setAsking(false)}>
        <p>{say("pumps.discardExplain")}</p>
        <p className="sheet-actions">
          <button type="button" className="action" onClick={() => setAsking(false)}>
            {say("pumps.keepIt")}
          </button>
          <button
            type="button"
            className="action action-warn"
            onClick={() => {
              setAsking(false);
              onDiscard();
            }}
          >
            {say("pumps.discardNow")}
          </button>
        </p>
      </Dialog>
    </footer>
  );
}
