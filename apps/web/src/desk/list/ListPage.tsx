import type { ReactNode } from "react";
import { useWords } from "../../words/useWords.ts";
import type { KeptList } from "../keptList.ts";

interface Props {
  /** Names the page's parts, such as "jobs". */
  readonly name: string;
  readonly title: string;
  readonly state: KeptList<unknown>["state"];
  /** What one may begin here, beside the title. */
  readonly hands: ReactNode;
  /** What stands here in place of the list, such as that there is nothing in it yet. */
  readonly instead: ReactNode;
  readonly children: ReactNode;
  /** What stands below the list, or below what stands in its place. */
  readonly foot?: ReactNode;
}

/** A page that is one list: its title and hands, whether it was refused, and the list or what stands in its place. */
export function ListPage({ name, title, state, hands, instead, children, foot }: Props) {
  const { say } = useWords();
  return (
    <section className="job-list" aria-labelledby={`${name}-title`}>
      <header className="list-head">
        <h1 id={`${name}-title`}>{title}</h1>
        {hands}
      </header>
      {state === "refused" ? <p className="field-problem">{say("desk.listRefused")}</p> : null}
      {instead ?? children}
      {foot}
    </section>
  );
}
