import { useWindowVirtualizer } from "@tanstack/react-virtual";
import { type ReactNode, type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import { useListKeys } from "./useListKeys.ts";

/** What the rows of a list are made from. */
export interface RowsShown<Item extends { readonly id: string }> {
  readonly shown: readonly Item[];
  /** Of one row [px], as desk.css has it. */
  readonly height: number;
  /** Names of the columns, where they do not speak for themselves. */
  readonly head?: ReactNode;
  /** A row: a link with its index as `data-row`, by which the keys find it. */
  readonly row: (item: Item, index: number) => ReactNode;
}

interface Props<Item extends { readonly id: string }> extends RowsShown<Item> {
  /** The search above, where the keys lead back to. */
  readonly input: RefObject<HTMLInputElement | null>;
}

/** The rows in sight, of however many there are. */
export function ListRows<Item extends { readonly id: string }>({ shown, height, head, row, input }: Props<Item>) {
  const list = useRef<HTMLOListElement>(null);
  const [top, setTop] = useState(0);
  useLayoutEffect(() => setTop(list.current?.offsetTop ?? 0), []);
  const rows = useWindowVirtualizer({
    count: shown.length,
    estimateSize: () => height,
    overscan: 8,
    scrollMargin: top,
    getItemKey: (index) => shown[index]?.id ?? index,
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: another height is another list
  useEffect(() => rows.measure(), [rows, height]);
  const keys = useListKeys({ count: shown.length, list, input, reveal: (index) => rows.scrollToIndex(index) });
  return (
    <>
      {head}
      <ol className="rows" ref={list} style={{ height: rows.getTotalSize() }} onKeyDown={keys}>
        {rows.getVirtualItems().map(({ index, start, key }) => {
          const item = shown[index];
          if (item === undefined) return null;
          return (
            <li
              key={key}
              aria-setsize={shown.length}
              aria-posinset={index + 1}
              style={{ height, transform: `translateY(${start - top}px)` }}
            >
              {row(item, index)}
            </li>
          );
        })}
      </ol>
    </>
  );
}
