import { routes } from "@tidewright/protocol";
import { type ReactNode, useState } from "react";
import { ask } from "../api/ask.ts";
import { Problem } from "../fields/Problem.tsx";
import { useWords } from "../words/useWords.ts";
import { KeptChoice } from "./KeptField.tsx";
import { LinkOnce, linkAddress } from "./LinkOnce.tsx";
import { refusalWords } from "./refusalWords.ts";

interface Props {
  /** What the link opens: an intake, or a design, always as it is or as one revision left it. */
  readonly opens:
    | { readonly kind: "intake" }
    | { readonly kind: "view"; readonly designId: string; readonly revision?: number };
  readonly explain: string;
  /** For how many days it may be open, and for how many it is where nothing else is chosen. */
  readonly spans: readonly number[];
  readonly span: number;
  readonly onMade: () => Promise<void>;
  /** Choices of what it opens. */
  readonly children?: ReactNode;
}

const pages = { intake: "intake", view: "share" } as const;

/** Makes a link for a customer, and then tells it, this once. */
export function MakeLink({ opens, explain, spans, span, onMade, children }: Props) {
  const words = useWords();
  const { say } = words;
  const [days, setDays] = useState(span);
  const [made, setMade] = useState<{ readonly address: string; readonly expires: string }>();
  const [problem, setProblem] = useState<string>();
  const make = async () => {
    const answer = await ask(routes.createLink, { body: { ...opens, days } });
    if (!answer.ok) {
      setProblem(refusalWords(answer, words));
      return;
    }
    setProblem(undefined);
    setMade({
      address: linkAddress(pages[opens.kind], answer.value.token, location.href),
      expires: answer.value.link.expiresAt,
    });
    await onMade();
  };
  if (made !== undefined) return <LinkOnce {...made} />;
  return (
    <form
      className="field-list"
      onSubmit={(event) => {
        event.preventDefault();
        void make();
      }}
    >
      <p>{explain}</p>
      {children}
      <KeptChoice label={say("desk.howLong")} value={String(days)} onChange={(value) => setDays(Number(value))}>
        {spans.map((each) => (
          <option key={each} value={each}>
            {say("desk.days", { days: each })}
          </option>
        ))}
      </KeptChoice>
      <Problem text={problem} />
      <p className="sheet-actions">
        <button type="submit" className="action action-strong">
          {say("desk.makeLink")}
        </button>
      </p>
    </form>
  );
}
