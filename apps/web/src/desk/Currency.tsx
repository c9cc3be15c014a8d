import type { ShopSettings } from "@tidewright/protocol";
import { useState } from "react";
import { useWords } from "../words/useWords.ts";
import { KeptText } from "./KeptField.tsx";

interface Props {
  readonly settings: Pick<ShopSettings, "currency" | "tariff">;
  readonly readOnly: boolean;
  readonly onCurrency: (change: Pick<ShopSettings, "currency" | "tariff">) => void;
}

/** What the shop reckons in; only whole codes are taken (ISO 4217), and the price of electricity goes along. */
export function Currency({ settings: { currency, tariff }, readOnly, onCurrency }: Props) {
  const { say } = useWords();
  const [typed, setTyped] = useState<string>();
  const text = typed ?? currency;
  const whole = /^[A-Z]{3}$/.test(text);
  return (
    <KeptText
      label={say("desk.setting.currency")}
      hint={say("desk.currencyHint")}
      value={text}
      most={3}
      readOnly={readOnly}
      problem={whole ? undefined : say("desk.currencyMissing")}
      onChange={(next) => {
        const code = next.trim().toUpperCase();
        setTyped(code);
        if (!/^[A-Z]{3}$/.test(code)) return;
        onCurrency({ currency: code, tariff: tariff === null ? null : { ...tariff, unit: `${code}/kWh` } });
      }}
      onLeave={() => {
        if (whole) setTyped(undefined);
      }}
    />
  );
}
