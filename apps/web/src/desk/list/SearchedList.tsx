import { type ReactNode, useRef } from "react";
import { useWords } from "../../words/useWords.ts";
import type { KeptList } from "../keptList.ts";
import { ListRows, type RowsShown } from "./ListRows.tsx";

interface Props<Item extends { readonly id: string }> extends RowsShown<Item> {
  /** The whole list, of which `shown` is what the search and the choices beside it leave. */
  readonly list: Pick<KeptList<Item>, "items" | "state">;
  readonly search: string;
  readonly searchHint: string;
  readonly onSearch: (search: string) => void;
  /** Choices beside the search. */
  readonly tools?: ReactNode;
  /** How many of how many are shown, in words. */
  readonly count: string;
}

/** A search, how many it leaves, and the rows of those, with keys that walk between them. */
export function SearchedList<Item extends { readonly id: string }>(props: Props<Item>) {
  const { list, search, searchHint, onSearch, tools, count, shown, height, head, row } = props;
  const { say } = useWords();
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <div className="list-tools">
        <label className="search-field">
          <span className="field-label">{say("desk.search")}</span>
          <input
            ref={input}
            className="text-input"
            type="search"
            autoComplete="off"
            placeholder={searchHint}
            value={search}
            onChange={(event) => onSearch(event.target.value)}
          />
        </label>
        {tools}
      </div>
      <p className="list-count quiet" role="status">
        {list.state === "loading" && list.items.length === 0 ? say("desk.loading") : count}
      </p>
      <ListRows shown={shown} height={height} head={head} row={row} input={input} />
      {shown.length === 0 && list.items.length > 0 ? <p className="list-none">{say("desk.noneFound")}</p> : null}
    </>
  );
}
