import "./anothers.css";
import { useState } from "react";
import { Sheet } from "../bench/Sheet.tsx";
import { designAddress } from "../state/address.ts";
import { mayWork, useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { allMakers, itemName } from "./anothersWords.ts";
import { type AnothersItem, decideOnAnothers, lookForAnothers, useAnothersWork } from "./anothersWork.ts";
import { type Decided, saveAnothers, sendAsMine, setApartAsMine } from "./decideAnothers.ts";
import { presentKeeping } from "./keepingState.ts";
import { makerWords } from "./makerWords.ts";

/** Asks what becomes of work of somebody else that waits on this device. Whatever is chosen, nothing of it is lost. */
export function AnothersSheet() {
  const words = useWords();
  const { say } = words;
  const { session } = useSession();
  const asking = useAnothersWork((state) => state.asking);
  const items = useAnothersWork((state) => state.items);
  if (!asking || items.length === 0) return null;
  const makers = makerWords(allMakers(items), words);
  const works = mayWork(session);
  // Work of two goes out by itself for neither of them.
  const returns = items.every((item) => item.makers.length === 1 && item.makers[0]?.who === "account");
  return (
    <Sheet name="anothers" title={say("keeping.anothersTitle", { makers })} open onClose={leave}>
      <p>{returns ? say("keeping.anothersReturn") : say("keeping.anothersStays")}</p>
      <p>{works ? say("keeping.anothersSender") : say("keeping.anothersLookOnly")}</p>
      <ul className="anothers-list">
        {items.map((item) => (
          <Item
            key={item.key}
            item={item}
            works={works}
            me={session?.who === "account" ? (session.name ?? "") : undefined}
          />
        ))}
      </ul>
      <div className="sheet-actions">
        <button type="button" className="action" onClick={leave}>
          {returns ? say("keeping.anothersKeep", { makers }) : say("keeping.anothersWait")}
        </button>
      </div>
    </Sheet>
  );
}

/** Leaves it to wait; a bench that has it on its table goes back to what the server has. */
function leave(): void {
  decideOnAnothers(false);
  const { kept, keeper } = presentKeeping();
  if (kept?.outbox.stop?.why !== "another") return;
  void keeper?.written().finally(() => location.reload());
}

interface Props {
  readonly item: AnothersItem;
  readonly works: boolean;
  /** Name of whoever is here now; undefined where nobody signs in. */
  readonly me: string | undefined;
}

function Item({ item, works, me }: Props) {
  const words = useWords();
  const { say } = words;
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  const run = async (work: () => Promise<Decided>, after: (decided: { readonly designId?: string }) => void) => {
    setBusy(true);
    const decided = await work().catch((error: unknown): Decided => ({ done: false, why: String(error) }));
    setBusy(false);
    setProblem(decided.done ? undefined : say("keeping.anothersFailed", { why: decided.why }));
    if (decided.done) after(decided);
  };
  const look = () => void lookForAnothers();
  const sends = works && !(item.kind === "typed" && item.record === "settings");
  return (
    <li className="anothers-item">
      <p>
        <b>{itemName(item, words)}</b>{" "}
        <span className="quiet">
          {item.kind === "design"
            ? say("keeping.anothersDesign", {
                name: item.surroundings.head.name,
                makers: makerWords(item.makers, words),
                count: item.changes,
              })
            : say("keeping.anothersTyped", { makers: makerWords(item.makers, words) })}
        </span>
      </p>
      <div className="anothers-hands">
        {sends ? (
          <button
            type="button"
            className="action action-strong"
            disabled={busy}
            onClick={() => void run(() => sendAsMine(item), look)}
          >
            {me === undefined ? say("keeping.anothersSendHere") : say("keeping.anothersSend", { me })}
          </button>
        ) : null}
        {works && item.kind === "design" ? (
          <button
            type="button"
            className="action"
            disabled={busy}
            onClick={() => void run(() => setApartAsMine(item), goOn(item, look))}
          >
            {say("keeping.anothersApart")}
          </button>
        ) : null}
        <button
          type="button"
          className="action"
          disabled={busy}
          onClick={() =>
            void run(
              () => saveAnothers(item),
              () => undefined,
            )
          }
        >
          {say("keeping.anothersFile")}
        </button>
      </div>
      {problem === undefined ? null : (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      )}
    </li>
  );
}

/** After work was set apart: a bench that had it on its table goes to the variant. */
function goOn(item: AnothersItem, look: () => void): (decided: { readonly designId?: string }) => void {
  return ({ designId }) => {
    if (presentKeeping().kept?.key === item.key && designId !== undefined) location.assign(designAddress(designId));
    else look();
  };
}
