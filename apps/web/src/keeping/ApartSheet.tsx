import { Sheet } from "../bench/Sheet.tsx";
import { compareAddress, designAddress } from "../state/address.ts";
import { useWords } from "../words/useWords.ts";
import { tellKeeping, useKeeping } from "./keepingState.ts";
import { authorWords, conflictParts } from "./openKept.ts";

/** Tells whoever was second that the work is kept apart, where it is, and how to see both. */
export function ApartSheet() {
  const { say } = useWords();
  const apart = useKeeping((state) => state.apart);
  if (apart === undefined) return null;
  const { from, parcel } = apart;
  const close = () => tellKeeping({ apart: undefined });
  const theirs = { designId: from.head.id, revision: parcel.theirs.revision };
  return (
    <Sheet name="apart" title={parcel.name} open onClose={close}>
      <p>
        {say("keeping.apart", {
          author: authorWords(parcel.theirs.author),
          parts: conflictParts(parcel.document, parcel.paths),
          variant: parcel.name,
        })}
      </p>
      <div className="sheet-actions">
        <a className="action" href={designAddress(from.head.id)}>
          {say("keeping.apartTheirs", { author: authorWords(parcel.theirs.author) })}
        </a>
        <a className="action" href={compareAddress(theirs, { designId: parcel.designId, revision: "latest" })}>
          {say("keeping.apartCompare")}
        </a>
        <button type="button" className="action action-strong" onClick={close}>
          {say("keeping.apartClose")}
        </button>
      </div>
    </Sheet>
  );
}
