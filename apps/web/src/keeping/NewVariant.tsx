import { routes } from "@tidewright/protocol";
import { type FormEvent, useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { designAddress } from "../state/address.ts";
import { presentDesign } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import type { KeeperState } from "./keeper.ts";
import { presentKeeping } from "./keepingState.ts";
import { newId } from "./newId.ts";
import { reasonOf } from "./reasonOf.ts";

interface Props {
  readonly kept: KeeperState;
  /** Which revision the variant begins with; what is on the table where none is named. */
  readonly revision?: number;
  readonly onClose: () => void;
}

/** Asks for a name and makes a variant; the bench goes there. */
export function NewVariant({ kept, revision, onClose }: Props) {
  const { say } = useWords();
  const { head, siblings } = kept.surroundings;
  const [name, setName] = useState(() => say("keeping.newVariantOf", { name: head.name, number: siblings.length + 1 }));
  const [failed, setFailed] = useState<string>();
  const [busy, setBusy] = useState(false);
  const make = async (event: FormEvent) => {
    event.preventDefault();
    setBusy(true);
    const answer = await ask(routes.createVariant, {
      params: { designId: kept.designId },
      body: {
        id: newId(),
        name: name.trim().slice(0, 200) || head.name,
        revision: revision ?? kept.outbox.acknowledged.revision,
        ...(revision === undefined ? { document: presentDesign() } : {}),
      },
    });
    setBusy(false);
    if (!answer.ok) {
      setFailed(say("keeping.newVariantFailed", { why: reasonOf(answer) }));
      return;
    }
    await presentKeeping().keeper?.written();
    location.assign(designAddress(answer.value.id));
  };
  return (
    <Sheet name="variant" title={say("keeping.newVariant")} open onClose={onClose}>
      <form onSubmit={make}>
        <label className="field">
          <span className="field-label">{say("keeping.newVariantName")}</span>
          <input className="text-input" value={name} maxLength={200} onChange={({ target }) => setName(target.value)} />
        </label>
        {failed === undefined ? null : (
          <p className="field-problem" role="alert">
            {failed}
          </p>
        )}
        <div className="sheet-actions">
          <button type="submit" className="action action-strong" disabled={busy}>
            {say("keeping.newVariantMake")}
          </button>
        </div>
      </form>
    </Sheet>
  );
}
