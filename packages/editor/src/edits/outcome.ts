import type { Edit } from "@tidewright/design";
import type { MessageKey, MessageValues } from "@tidewright/words";

/** A text of the catalogue with what is put into it: the editor says things, the page words them. */
export interface Saying {
  readonly key: MessageKey;
  readonly values?: MessageValues;
  /** Values that are texts of the catalogue themselves. */
  readonly named?: Readonly<Record<string, MessageKey>>;
}

/** What an operation on the drawing comes to: edits that count as one step, with the part then in hand, or why it cannot
 *  be done. Whether the changed document is sound is for `checkDesign` to say. */
export type Outcome =
  | {
      readonly ok: true;
      readonly edits: readonly Edit[];
      /** Part in hand afterwards; none where nothing is left to hold. */
      readonly select: string | undefined;
      readonly label: Saying;
    }
  | { readonly ok: false; readonly why: Saying };

/** An operation that cannot be done, and why. */
export const refused = (key: MessageKey, values?: MessageValues): Outcome => ({
  ok: false,
  why: values === undefined ? { key } : { key, values },
});
