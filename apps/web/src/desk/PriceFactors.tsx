import { useState } from "react";
import { useWords } from "../words/useWords.ts";
import { KeptText } from "./KeptField.tsx";
import { readDecimal } from "./readDecimal.ts";

interface Props {
  readonly factors: Readonly<Record<string, number>>;
  readonly readOnly: boolean;
  readonly onFactors: (factors: Record<string, number>) => void;
}

/** What the shop's prices are of the catalogue's, by maker or kind. */
export function PriceFactors({ factors, readOnly, onFactors }: Props) {
  const words = useWords();
  const { say } = words;
  const [name, setName] = useState("");
  const [factor, setFactor] = useState("");
  const [problem, setProblem] = useState<string>();
  const add = () => {
    const value = readDecimal(factor);
    if (name.trim() === "" || value === undefined || value <= 0 || value > 1000) {
      setProblem(say("desk.factorWrong"));
      return;
    }
    setProblem(undefined);
    onFactors({ ...factors, [name.trim()]: value });
    setName("");
    setFactor("");
  };
  return (
    <div className="factors">
      <h3>{say("desk.setting.priceMultipliers")}</h3>
      <p className="quiet">{say("desk.factorsExplain")}</p>
      <ul className="plain-list">
        {Object.entries(factors).map(([of, value]) => (
          <li key={of} className="factor">
            <span>{of}</span>
            <span className="number">× {words.number(value, { maximumFractionDigits: 4 })}</span>
            {readOnly ? null : (
              <button
                type="button"
                className="icon-button"
                aria-label={say("desk.removeFactor", { name: of })}
                onClick={() => {
                  const { [of]: _gone, ...rest } = factors;
                  onFactors(rest);
                }}
              >
                ×
              </button>
            )}
          </li>
        ))}
      </ul>
      {readOnly ? null : (
        <form
          className="name-form factor-form"
          onSubmit={(event) => {
            event.preventDefault();
            add();
          }}
        >
          <KeptText label={say("desk.factorOf")} value={name} onChange={setName} />
          <KeptText label={say("desk.factor")} value={factor} most={12} problem={problem} onChange={setFactor} />
          <button type="submit" className="action">
            {say("desk.add")}
          </button>
        </form>
      )}
    </div>
  );
}
