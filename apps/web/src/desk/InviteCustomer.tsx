import { routes } from "@tidewright/protocol";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { useWords } from "../words/useWords.ts";
import { LinkTable } from "./LinkTable.tsx";
import { MakeLink } from "./MakeLink.tsx";
import { useAsked } from "./useAsked.ts";

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
  const { say } = useWords();
  const links = useAsked("intake links", () => ask(routes.links, { query: {} }));
  const open = (links.value?.items ?? []).filter(
    (link) => link.kind === "intake" && link.revokedAt === null && link.expiresAt > new Date().toISOString(),
  );
  return (
    <div className="field-list">
      <MakeLink
        opens={{ kind: "intake" }}
        explain={say("desk.inviteExplain")}
        spans={[7, 14, 30, 90]}
        span={14}
        onMade={links.again}
      />
      {open.length === 0 ? null : (
        <section>
          <h3>{say("desk.openInvitations")}</h3>
          <LinkTable links={open} nameOf={() => say("desk.invitation")} readOnly={false} onChanged={links.again} />
        </section>
      )}
    </div>
  );
}
