import type { NotOpened } from "../keeping/openKept.ts";
import { useWords } from "../words/useWords.ts";

interface Props {
  readonly not: NotOpened;
  readonly onAgain: () => void;
}

/** Why a design does not lie on the table, and where to go from here. */
export function NotOpenedPage({ not, onAgain }: Props) {
  const { say } = useWords();
  const why =
    not.why === "unreachable"
      ? say("keeping.away")
      : not.why === "gone"
        ? say("keeping.missing")
        : not.why === "refused"
          ? say("keeping.unreadable", { title: not.title, detail: not.detail })
          : say("keeping.notYours");
  return (
    <main className="not-opened">
      <p className="wordmark">Tidewright</p>
      <h1>{why}</h1>
      <p className="sheet-actions">
        <a className="action" href="./">
          {say("keeping.toDesk")}
        </a>
        <a className="action" href="./?try">
          {say("keeping.toTry")}
        </a>
        <button type="button" className="action action-strong" onClick={onAgain}>
          {say("keeping.again")}
        </button>
      </p>
    </main>
  );
}
