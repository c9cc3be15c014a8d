import { routes } from "@tidewright/protocol";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { useWords } from "../words/useWords.ts";
import { KeptChoice } from "./KeptField.tsx";
import { LinkOnce, linkAddress } from "./LinkOnce.tsx";
import { LinkTable } from "./LinkTable.tsx";
import { refusalWords } from "./refusalWords.ts";
import { useAsked } from "./useAsked.ts";

const spans = [7, 14, 30, 90] as const;

/** A link that a customer fills in on a phone; it comes back as a job to review. */
export function InviteCustomer() {
  const { say } = useWords();
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="action" onClick={() => setOpen(true)}>
        {say("desk.invite")}
      </button>
      <Sheet name="invite" title={say("desk.invite")} open={open} onClose={() => setOpen(false)}>
        <Inviting />
      </Sheet>
    </>
  );
}

function Inviting() {
  const words = useWords();
  const { say } = words;
  const [days, setDays] = useState<number>(14);
  const [made, setMade] = useState<{ readonly address: string; readonly expires: string }>();
  const [problem, setProblem] = useState<string>();
  const links = useAsked("intake links", () => ask(routes.links, { query: {} }));
  const open = (links.value?.items ?? []).filter(
    (link) => link.kind === "intake" && link.revokedAt === null && link.expiresAt > new Date().toISOString(),
  );
  const make = async () => {
    const answer = await ask(routes.createLink, { body: { kind: "intake", days } });
    if (!answer.ok) {
      setProblem(refusalWords(answer, words));
      return;
    }
    setProblem(undefined);
    setMade({
      address: linkAddress("intake", answer.value.token, location.href),
      expires: answer.value.link.expiresAt,
    });
    await links.again();
  };
  return (
    <div className="field-list">
      {made === undefined ? (
        <form
          className="field-list"
          onSubmit={(event) => {
            event.preventDefault();
            void make();
          }}
        >
          <p>{say("desk.inviteExplain")}</p>
          <KeptChoice label={say("desk.howLong")} value={String(days)} onChange={(value) => setDays(Number(value))}>
            {spans.map((span) => (
              <option key={span} value={span}>
                {say("desk.days", { days: span })}
              </option>
            ))}
          </KeptChoice>
          {problem === undefined ? null : (
            <p className="field-problem" role="alert">
              {problem}
            </p>
          )}
          <p className="sheet-actions">
            <button type="submit" className="action action-strong">
              {say("desk.makeLink")}
            </button>
          </p>
        </form>
      ) : (
        <LinkOnce {...made} />
      )}
      {open.length === 0 ? null : (
        <section>
          <h3>{say("desk.openInvitations")}</h3>
          <LinkTable links={open} nameOf={() => say("desk.invitation")} readOnly={false} onChanged={links.again} />
        </section>
      )}
    </div>
  );
}
