import {
  type Assessment,
  assess,
  type FirstDesign,
  firstDesign,
  namedInWords,
  type ShopGround,
  type StartAnswers,
} from "@tidewright/advice";
import { useEffect, useRef, useState } from "react";
import { currentCatalogue, useCatalogue } from "../catalogue/currentCatalogue.ts";
import { words } from "../words/useWords.ts";

/** A first design with its assessment, and how long it took [s]. */
export interface Made extends FirstDesign {
  readonly assessment: Assessment;
  readonly took: number;
  /** The answers it was made of, as text. */
  readonly of: string;
}

/** Quiet time after the last key before the system is solved anew [ms]. */
const pause = 180;

/** Returns the first design of the answers in a shop, a moment after they change; the last one stands until then. */
export function useFirstDesign(answers: StartAnswers | undefined, shop: ShopGround): Made | undefined {
  const [made, setMade] = useState<Made>();
  const key = answers === undefined ? undefined : JSON.stringify(answers);
  const latest = useRef(answers);
  latest.current = answers;
  const catalogue = useCatalogue();
  // biome-ignore lint/correctness/useExhaustiveDependencies: with other pumps it is another design
  useEffect(() => {
    if (key === undefined) return undefined;
    const timer = setTimeout(() => {
      if (latest.current !== undefined) setMade(makeFirst(latest.current, shop));
    }, pause);
    return () => clearTimeout(timer);
  }, [key, catalogue, shop]);
  return made;
}

/** Makes a first design at once. */
export function makeFirst(answers: StartAnswers, shop: ShopGround): Made {
  const began = performance.now();
  const catalogue = currentCatalogue();
  const made = firstDesign(answers, catalogue, shop);
  const first = { ...made, design: namedInWords(made.design, words()) };
  const assessment = assess(first.design, catalogue, { curves: false });
  return { ...first, assessment, took: (performance.now() - began) / 1000, of: JSON.stringify(answers) };
}
