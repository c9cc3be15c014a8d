import { type Link, routes } from "@tidewright/protocol";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { Problem } from "../fields/Problem.tsx";
import { useWords } from "../words/useWords.ts";
import { authorWords } from "./authorWords.ts";
import { refusalWords } from "./refusalWords.ts";

interface Props {
  readonly links: readonly Link[];
  readonly nameOf: (link: Link) => string;
  readonly readOnly: boolean;
  readonly onChanged: () => Promise<void>;
}

/** Links with what they open, until when, and a way to close them at once. */
export function LinkTable({ links, nameOf, readOnly, onChanged }: Props) {
  const words = useWords();
  const { say } = words;
  const [problem, setProblem] = useState<string>();
  const [sure, setSure] = useState<string>();
  const now = new Date().toISOString();
  const revoke = async (link: Link) => {
    setSure(undefined);
    const answer = await ask(routes.revokeLink, { params: { linkId: link.id } });
    setProblem(answer.ok ? undefined : refusalWords(answer, words));
    await onChanged();
  };
  return (
    <>
      <Problem text={problem} />
      <ul className="links">
        {links.map((link) => {
          const closed = link.revokedAt !== null;
          const past = link.expiresAt <= now;
          return (
            <li key={link.id} className="link-row" data-closed={closed || past ? "" : undefined}>
              <span className="link-name">{nameOf(link)}</span>
              <span className="quiet">
                {closed
                  ? say("desk.linkClosed", { when: words.instant(link.revokedAt ?? now, { dateStyle: "medium" }) })
                  : past
                    ? say("desk.linkPast", { when: words.instant(link.expiresAt, { dateStyle: "medium" }) })
                    : say("desk.linkOpen", { when: words.instant(link.expiresAt, { dateStyle: "medium" }) })}
                {" · "}
                {say("desk.linkBy", { name: authorWords(link.createdBy, words) })}
              </span>
              {closed || past || readOnly ? null : sure === link.id ? (
                <button type="button" className="action action-warn" onClick={() => void revoke(link)}>
                  {say("desk.revokeSure")}
                </button>
              ) : (
                <button type="button" className="tool" onClick={() => setSure(link.id)}>
                  {say("desk.revoke")}
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </>
  );
}
