/** One place where two people are at odds. `path` leads to it in the document that both began with; to an entry that both
 *  added, by its number in theirs. What is not there is undefined. Values in the user's units. */
export interface MergeConflict {
  readonly path: string;
  readonly base: unknown;
  readonly mine: unknown;
  readonly theirs: unknown;
}
