import {
  assess,
  levers,
  type RankOptions,
  rank,
  type Scenario,
  safetySweep,
  scenariosOf,
  type WhatIf,
  whatIf,
  withSweep,
} from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { checkDesign, checkScenario, type Design, type Problem, readDesign, readJson } from "@tidewright/design";
import { type Context, Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { answerOf } from "../commands/networkCommand.ts";
import { BadInput } from "../input/badInput.ts";
import { asScenario, unknownScenario } from "../input/chooseScenario.ts";
import { largestInput } from "../input/readInput.ts";
import { jsonText } from "../output/deliver.ts";
import { openApiDocument } from "./openApi.ts";
import { badDocument, type ProblemDetails, problemResponse } from "./problemDetails.ts";

const tooLarge: ProblemDetails = {
  type: "urn:tidewright:problem:too-large",
  title: "The document is too large",
  status: 413,
  detail: `up to ${largestInput / 1e6} MB are read; split several systems into a document each`,
};

const notJson: ProblemDetails = {
  type: "urn:tidewright:problem:media-type",
  title: "The body is not announced as JSON",
  status: 415,
  detail: "send the document with Content-Type: application/json",
};

/** Returns the routes under /api: the answers and their own description. */
export function api(): Hono {
  const routes = new Hono();
  // A browser sends JSON across origins only after asking first, which is never granted here; plain forms it sends
  // unasked, so a body that is not announced as JSON is refused.
  routes.use(async (context, next) => {
    const kind = context.req.header("Content-Type")?.split(";")[0]?.trim().toLowerCase() ?? "";
    if (context.req.method === "POST" && !/^application\/(.+\+)?json$/.test(kind))
      return problemResponse(context, notJson);
    return next();
  });
  routes.use(bodyLimit({ maxSize: largestInput, onError: (context) => problemResponse(context, tooLarge) }));
  routes.get("/openapi.json", (context) => context.json(openApiDocument()));
  routes.post("/assess", async (context) => {
    const design = await designOf(context);
    return answer(context, withSweep(assess(design, demoCatalogue), safetySweep(design, demoCatalogue)));
  });
  routes.post("/rank", async (context) => {
    const design = await designOf(context);
    return answer(context, rank(design, demoCatalogue, rankOptions(context, design)));
  });
  routes.post("/levers", async (context) => answer(context, levers(await designOf(context), demoCatalogue)));
  routes.post("/safety", async (context) => {
    const design = await designOf(context);
    return answer(context, safetySweep(design, demoCatalogue, { days: daysOf(context) }));
  });
  routes.post("/whatif", async (context) => {
    const design = await designOf(context);
    return answer(context, played(design, scenarioOf(context, design), context));
  });
  routes.post("/whatif/own", async (context) => {
    const { design, scenario } = ownScenarioOf(await context.req.text());
    return answer(context, played(design, scenario, context));
  });
  routes.post("/network", async (context) => answer(context, answerOf(await context.req.text(), "body")));
  return routes;
}

async function designOf(context: Context): Promise<Design> {
  const reading = readDesign(await context.req.text(), demoCatalogue);
  if (reading.ok) return reading.design;
  throw new BadInput("body", reading.problems);
}

function rankOptions(context: Context, design: Design): RankOptions {
  const problems: Problem[] = [];
  const { loop, pairs = "true" } = context.req.query();
  const count = design.loops.length;
  if (loop !== undefined && (!/^[1-9]\d*$/.test(loop) || Number(loop) > count))
    problems.push({ path: "?loop", message: "there is no such loop", value: loop, fix: `give 1 to ${count}` });
  if (pairs !== "true" && pairs !== "false")
    problems.push({ path: "?pairs", message: "neither true nor false", value: pairs, fix: "give true or false" });
  if (problems.length > 0) throw new BadInput("query", problems);
  return { pairs: pairs === "true", ...(loop === undefined ? {} : { loop: Number(loop) - 1 }) };
}

const mostDays = 60;

function daysOf(context: Context): number {
  const { days = "10" } = context.req.query();
  if (/^[1-9]\d*$/.test(days) && Number(days) <= mostDays) return Number(days);
  const fix = `give 1 to ${mostDays}`;
  throw new BadInput("query", [{ path: "?days", message: "not a whole number of days in reach", value: days, fix }]);
}

function scenarioOf(context: Context, design: Design): Scenario {
  const { scenario: id = "powerCut" } = context.req.query();
  const known = scenariosOf(design, daysOf(context));
  const found = known.find((scenario) => scenario.id === id);
  if (found !== undefined) return found;
  const [message, fix, value] = unknownScenario(id, known);
  throw new BadInput("query", [{ path: "?scenario", message, fix, value }]);
}

/** A body of both: problems of each are told with the field they stand in. */
function ownScenarioOf(text: string): { readonly design: Design; readonly scenario: Scenario } {
  const read = readJson(text);
  if (!read.ok) throw new BadInput("body", read.problems);
  const body = read.value as { readonly design?: unknown; readonly scenario?: unknown };
  const missing = (["design", "scenario"] as const).flatMap((name) =>
    Object.hasOwn(body, name)
      ? []
      : [
          {
            path: `/${name}`,
            message: `the field "${name}" is missing`,
            fix: `add the ${name} document under "${name}"`,
          },
        ],
  );
  const under = (name: string, problems: readonly Problem[]) =>
    problems.map((problem) => ({ ...problem, path: `/${name}${problem.path}` }));
  if (missing.length > 0) throw new BadInput("body", missing);
  const design = checkDesign(body.design, demoCatalogue);
  // Without a sound design the scenario's parts cannot be looked for: its own form is told at the next try.
  if (!design.ok) throw new BadInput("body", under("design", design.problems));
  const scenario = checkScenario(body.scenario, design.design);
  if (!scenario.ok) throw new BadInput("body", under("scenario", scenario.problems));
  return { design: design.design, scenario: asScenario(scenario.scenario) };
}

function played(design: Design, scenario: Scenario, context: Context): WhatIf {
  const { film = "true" } = context.req.query();
  if (film === "true" || film === "false") return whatIf(design, demoCatalogue, scenario, film === "true");
  const problem = { path: "?film", message: "neither true nor false", value: film, fix: "give true or false" };
  throw new BadInput("query", [problem]);
}

function answer(context: Context, result: unknown): Response {
  return context.body(jsonText(result), 200, { "Content-Type": "application/json" });
}

/** Returns the response to a failure: the list of problems for bad input, a plain word for a fault of ours. */
export function failure(context: Context, error: unknown): Response {
  if (error instanceof BadInput) return problemResponse(context, badDocument(error.problems));
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(`${context.req.method} ${context.req.path}: ${message}\n`);
  return problemResponse(context, {
    type: "urn:tidewright:problem:our-fault",
    title: "Tidewright failed, and the fault is its own",
    status: 500,
    detail: message,
  });
}
