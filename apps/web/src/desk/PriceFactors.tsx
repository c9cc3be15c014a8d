import type { PricedKind } from "@tidewright/catalogue";
import { useEffect, useState } from "react";
import { useWords } from "../words/useWords.ts";
import { KeptText } from "./KeptField.tsx";
import { readDecimal } from "./readDecimal.ts";

const kinds = ["pump", "controller", "device", "pipe", "fitting", "valve"] as const satisfies readonly PricedKind[];

type PricedNames = typeof import("../catalogue/pricedNames.ts");

interface Props {
  readonly factors: Readonly<Record<string, number>>;
  readonly readOnly: boolean;
  readonly onFactors: (factors: Record<string, number>) => void;
}

/** Returns how names are read once the catalogue is there, which this page needs for nothing else. */
function usePricedNames(): PricedNames | undefined {
  const [names, setNames] = useState<PricedNames>();
  useEffect(() => {
    let here = true;
    void import("../catalogue/pricedNames.ts").then(
      (read) => here && setNames(() => read),
      // Without it a name stands as it was typed, which the catalogue reads all the same.
      () => undefined,
    );
    return () => {
      here = false;
    };
  }, []);
  return names;
}

/** What the shop's prices are of the catalogue's, by maker or kind. */
export function PriceFactors({ factors, readOnly, onFactors }: Props) {
  const words = useWords();
  const { say } = words;
  const [name, setName] = useState("");
  const [factor, setFactor] = useState("");
  const [problem, setProblem] = useState<string>();
  const names = usePricedNames();
  const read = (text: string) => names?.pricedName(text, (kind) => say(`desk.kind.${kind}`));
  const shown = (of: string) => {
    const known = read(of);
    return known?.of === "kind" ? say(`desk.kind.${known.name}`) : of;
  };
  const add = () => {
    const value = readDecimal(factor);
    if (name.trim() === "" || value === undefined || value <= 0 || value > 1000) {
      setProblem(say("desk.factorWrong"));
      return;
    }
    setProblem(undefined);
    onFactors({ ...factors, [read(name)?.name ?? name.trim()]: value });
    setName("");
    setFactor("");
  };
  return (
    <div className="factors">
      <h3>{say("desk.setting.priceMultipliers")}</h3>
      <p className="quiet">
        {say("desk.factorsExplain", { kinds: kinds.map((kind) => say(`desk.kind.${kind}`)).join(", ") })}
      </p>
      <ul className="plain-list">
        {Object.entries(factors).map(([of, value]) => (
          <li key={of} className="factor">
            <span>
              {shown(of)}
              {read(of)?.of === "nothing" ? <small className="quiet"> {say("desk.factorOfNone")}</small> : null}
            </span>
            <span className="number">× {words.number(value, { maximumFractionDigits: 4 })}</span>
            {readOnly ? null : (
              <button
                type="button"
                className="icon-button"
                aria-label={say("desk.removeFactor", { name: shown(of) })}
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
