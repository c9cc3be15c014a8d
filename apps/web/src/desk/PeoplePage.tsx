import { mayRule } from "../state/mayRule.ts";
import { useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { Accounts } from "./Accounts.tsx";
import { AuditTrail } from "./AuditTrail.tsx";
import { useTitle } from "./useTitle.ts";
import { You } from "./You.tsx";

/** Who may work here, and what was done. */
export function PeoplePage() {
  const { say } = useWords();
  useTitle(say("desk.people"));
  const { session } = useSession();
  const owns = mayRule(session);
  return (
    <article className="job-page">
      <h1 className="page-title">{say("desk.people")}</h1>
      <You session={session} />
      {owns ? (
        <>
          <Accounts />
          <AuditTrail />
        </>
      ) : (
        <p className="quiet">{say("desk.ownerOnly")}</p>
      )}
    </article>
  );
}
