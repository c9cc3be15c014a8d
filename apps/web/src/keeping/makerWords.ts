import type { Words } from "@tidewright/words";
import type { Maker } from "../state/maker.ts";

/** Returns in words whose work something is: "Ina and Jo". */
export function makerWords(makers: readonly Maker[], { language, say }: Words): string {
  const names = makers.map((one) => {
    if (one.who === "account") return one.name;
    return one.who === "thisMachine" ? say("keeping.makerHere") : say("keeping.makerUnknown");
  });
  return new Intl.ListFormat(language, { type: "conjunction" }).format([...new Set(names)]);
}
