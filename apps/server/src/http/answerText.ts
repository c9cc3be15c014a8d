import type { Route } from "@tidewright/protocol";

/** Returns an answer as JSON, cut to its schema, so that nothing leaves the server that the protocol does not name.
 *  route that answers; answer of its handler   -> JSON text
 *  Throws: where the answer is not of the schema: our fault, told as such. */
export function answerText(route: Route, answer: unknown): string {
  if (typeof route.answer === "string") return "";
  const checked = route.answer.safeParse(answer);
  if (checked.success) return JSON.stringify(checked.data);
  const places = checked.error.issues.map((issue) => `${issue.path.join("/")}: ${issue.message}`);
  throw new Error(`the answer of ${route.id} is not of its schema: ${places.join("; ")}`);
}
