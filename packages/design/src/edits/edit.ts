/** One change of a document. `path` and `from` are RFC 6901 JSON Pointers.
 *  set      puts a value at `path`: replaces what is there, or adds a field to an object; "" replaces the whole document
 *  insert   puts a value into a list before the place `path`; "-" as the place is the end
 *  remove   takes the field or list entry at `path` away
 *  move     takes what is at `from` and puts it at `path`, as remove and then insert (into a list) or set (a new field) */
export type Edit =
  | { readonly op: "set"; readonly path: string; readonly value: unknown }
  | { readonly op: "insert"; readonly path: string; readonly value: unknown }
  | { readonly op: "remove"; readonly path: string }
  | { readonly op: "move"; readonly from: string; readonly path: string };
