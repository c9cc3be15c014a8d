/** Where a row comes from. `title` names the book, standard or reason; `where` the table, page or equation;
 *  `status` says how far it can be trusted: published and seen, common practice without a source,
 *  from memory (unconfirmed), or invented for the demonstration. No units. */
export interface Source {
  title: string;
  where?: string;
  status: "published" | "common practice" | "from memory" | "invented";
}

/** Source of everything that exists only in the demonstration catalogue: prices, makers, pumps, devices. */
export const inventedSource: Source = { title: "Invented for the demonstration catalogue", status: "invented" };
