import { assess, levers, type RankOptions, rank } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, type Problem, readDesign } from "@tidewright/design";
import { type Context, Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { answerOf } from "../commands/networkCommand.ts";
import { BadInput } from "../input/badInput.ts";
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

/** Returns the routes under /api: the four answers and their own description. */
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
  routes.post("/assess", async (context) => answer(context, assess(await designOf(context), demoCatalogue)));
  routes.post("/rank", async (context) => {
    const design = await designOf(context);
    return answer(context, rank(design, demoCatalogue, rankOptions(context, design)));
  });
  routes.post("/levers", async (context) => answer(context, levers(await designOf(context), demoCatalogue)));
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
