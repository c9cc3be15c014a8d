import { useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { allMakers, itemName } from "./anothersWords.ts";
import { decideOnAnothers, useAnothersWork } from "./anothersWork.ts";
import { makerWords } from "./makerWords.ts";

/** Tells that work of somebody else waits on this device, and on what. */
export function AnothersLine() {
  const words = useWords();
  const items = useAnothersWork((state) => state.items);
  const left = useAnothersWork((state) => state.left);
  const asking = useAnothersWork((state) => state.asking);
  const { session } = useSession();
  const told = items.some(({ key }) => !left.includes(key));
  if (!told || asking || session === undefined || session.who === "nobody") return null;
  const names = [...new Set(items.map((item) => itemName(item, words)))];
  return (
    <div className="update-line anothers-line" role="status">
      <span>
        {words.say("keeping.anothersLine", {
          makers: makerWords(allMakers(items), words),
          first: names[0]!,
          more: names.length - 1,
        })}
      </span>
      <button type="button" className="action action-strong" onClick={() => decideOnAnothers(true)}>
        {words.say("keeping.anothersDecide")}
      </button>
      <button type="button" className="action" onClick={() => decideOnAnothers(false)}>
        {words.say("keeping.anothersLater")}
      </button>
    </div>
  );
}
