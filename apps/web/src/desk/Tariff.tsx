import type { ShopSettings } from "@tidewright/protocol";
import { useState } from "react";
import { useWords } from "../words/useWords.ts";
import { KeptText } from "./KeptField.tsx";
import { readDecimal } from "./readDecimal.ts";

interface Props {
  readonly tariff: ShopSettings["tariff"];
  readonly currency: string;
  readonly readOnly: boolean;
  readonly onTariff: (tariff: ShopSettings["tariff"]) => void;
}

/** What a kilowatt hour costs here. */
export function Tariff({ tariff, currency, readOnly, onTariff }: Props) {
  const words = useWords();
  const { say } = words;
  const shown = tariff === null ? "" : words.decimal(String(tariff.value));
  const [typed, setTyped] = useState<string>();
  const text = typed ?? shown;
  const wrong = text.trim() !== "" && readDecimal(text) === undefined;
  return (
    <KeptText
      label={say("desk.tariffIn", { currency })}
      value={text}
      most={20}
      readOnly={readOnly}
      hint={say("desk.tariffHint")}
      problem={wrong ? say("desk.notANumber") : undefined}
      onChange={(next) => {
        setTyped(next);
        const value = readDecimal(next);
        if (value !== undefined) onTariff({ value, unit: `${currency}/kWh` });
        else if (next.trim() === "") onTariff(null);
      }}
      onLeave={() => {
        if (!wrong) setTyped(undefined);
      }}
    />
  );
}
