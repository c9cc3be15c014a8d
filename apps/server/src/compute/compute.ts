import { assess, firstDesign, levers, rank, readStart, safetySweep, whatIf, withSweep } from "@tidewright/advice";
import { type Catalogue, demoCatalogue, withOwnPumps, withShopPrices } from "@tidewright/catalogue";
import { type Design, networkAnswer, networkModel, readDesign, readNetwork } from "@tidewright/design";
import { solveNetwork } from "@tidewright/engine";
import { BadDocument, type Computation, type ComputeAnswer, type ComputeRequest } from "./computeRequest.ts";
import { ownScenarioOf } from "./ownScenarioOf.ts";
import { daysOf, filmOf, rankOptionsOf, scenarioOf } from "./queryOf.ts";

type Compute = (
  text: string,
  query: ComputeRequest["query"],
  catalogue: Catalogue,
  shop: ComputeRequest["shop"],
) => unknown;

const computing: Readonly<Record<Computation, Compute>> = {
  assess: (text, _query, catalogue) => {
    const design = designOf(text, catalogue);
    return withSweep(assess(design, catalogue), safetySweep(design, catalogue));
  },
  rank: (text, query, catalogue) => {
    const design = designOf(text, catalogue);
    return rank(design, catalogue, rankOptionsOf(query, design));
  },
  levers: (text, _query, catalogue) => levers(designOf(text, catalogue), catalogue),
  safety: (text, query, catalogue) => safetySweep(designOf(text, catalogue), catalogue, { days: daysOf(query) }),
  whatif: (text, query, catalogue) => {
    const design = designOf(text, catalogue);
    return whatIf(design, catalogue, scenarioOf(query, design), filmOf(query));
  },
  "whatif/own": (text, query, catalogue) => {
    const { design, scenario } = ownScenarioOf(text, catalogue);
    return whatIf(design, catalogue, scenario, filmOf(query));
  },
  firstDesign: (text, _query, catalogue, shop) => {
    const started = readStart(JSON.parse(text));
    if (!started.ok) throw new BadDocument(started.problems);
    return firstDesign(started.answers, catalogue, shop);
  },
  network: (text) => {
    const reading = readNetwork(text);
    if (!reading.ok) throw new BadDocument(reading.problems);
    return networkAnswer(solveNetwork(networkModel(reading.document)));
  },
};

/** Returns the answer of hydraulics to a document.
 *  request what to compute, of which document   -> ComputeAnswer; numbers in SI, null where they are not finite
 *  Throws: never; what goes wrong is in the answer, which travels between threads. */
export function compute({ computation, text, query, pumps, prices = {}, shop }: ComputeRequest): ComputeAnswer {
  const catalogue = withOwnPumps(withShopPrices(demoCatalogue, prices), pumps);
  try {
    return { ok: true, json: jsonOf(computing[computation](text, query, catalogue, shop)) };
  } catch (error) {
    if (error instanceof BadDocument) return { ok: false, problems: error.problems };
    return { ok: false, fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

function designOf(text: string, catalogue: Catalogue): Design {
  const reading = readDesign(text, catalogue);
  if (reading.ok) return reading.design;
  throw new BadDocument(reading.problems);
}

/** Typed arrays as lists; RFC 8259 has no other word than null for numbers without a finite value. */
function jsonOf(value: unknown): string {
  return JSON.stringify(value, (_key, each: unknown) =>
    ArrayBuffer.isView(each) ? [...(each as Float64Array)] : each,
  );
}
