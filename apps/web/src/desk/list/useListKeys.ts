import { type KeyboardEvent, type RefObject, useEffect } from "react";

interface Options {
  readonly count: number;
  readonly list: RefObject<HTMLElement | null>;
  readonly input: { readonly current: HTMLInputElement | null };
  /** Brings a row into sight that may not be on the page yet. */
  readonly reveal: (index: number) => void;
}

/** Keys of a list below a search: "/" goes to the search, arrows walk between it and the rows, Enter opens as on any link. */
export function useListKeys({ count, list, input, reveal }: Options): (event: KeyboardEvent) => void {
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent) => {
      const target = event.target as HTMLElement;
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.key === "/" && !target.matches("input, textarea, select") && !target.closest("dialog")) {
        event.preventDefault();
        input.current?.focus();
        input.current?.select();
      } else if (event.key === "ArrowDown" && target === input.current && count > 0) {
        event.preventDefault();
        go(0);
      }
    };
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  });

  const go = (index: number) => {
    reveal(index);
    // The row comes onto the page with the next frame, or the one after it.
    let tries = 5;
    const find = () => {
      const row = list.current?.querySelector<HTMLElement>(`[data-row="${index}"]`);
      if (row) row.focus({ preventScroll: true });
      else if (tries-- > 0) requestAnimationFrame(find);
    };
    find();
  };

  return (event) => {
    const at = Number((event.target as HTMLElement).closest<HTMLElement>("[data-row]")?.dataset["row"]);
    if (Number.isNaN(at)) return;
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: count - 1, PageDown: at + 10, PageUp: at - 10 }[
      event.key
    ];
    if (to === undefined) return;
    event.preventDefault();
    if (to < 0 && event.key === "ArrowUp") input.current?.focus();
    else go(Math.max(0, Math.min(count - 1, to)));
  };
}
