/** Returns a text as it is searched: without case, without accents, with ss for the German sharp s.
 *  Example: folded("Café ÄRMEL, groß")  ->  "cafe armel, gross" */
export function folded(text: string): string {
  return text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replaceAll("ß", "ss");
}

/** Returns those items in whose text every word of a search stands, in their order.
 *  items   textOf what is searched of an item, folded   search as typed   -> items; all of them for an empty search
 *  Example: matchWords(["north reef", "reef", "north"], (text) => text, "REEF north")  ->  ["north reef"] */
export function matchWords<Item>(items: readonly Item[], textOf: (item: Item) => string, search: string): Item[] {
  const wanted = folded(search).split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return [...items];
  return items.filter((item) => {
    const text = textOf(item);
    return wanted.every((word) => text.includes(word));
  });
}

/** Returns a function that folds an item's text once and remembers it for as long as the item lives. */
export function foldedOnce<Item extends object>(textOf: (item: Item) => string): (item: Item) => string {
  const known = new WeakMap<Item, string>();
  return (item) => {
    let text = known.get(item);
    if (text === undefined) {
      text = folded(textOf(item));
      known.set(item, text);
    }
    return text;
  };
}
