import type { Design } from "@tidewright/design";
import { type ProblemDetails, routes } from "@tidewright/protocol";
import { ask } from "../api/ask.ts";
import { refusedWords } from "../words/refusedWords.ts";
import { words } from "../words/useWords.ts";

/** What became of a first design: kept under an id, or why not. */
export type Kept =
  | { readonly ok: true; readonly designId: string }
  | { readonly ok: false; readonly reason: "unreachable" }
  | { readonly ok: false; readonly reason: "refused"; readonly detail: string };

/** What is to be kept: the job that it goes into, or the name of a new one and, if said, of its customer. */
export interface ToKeep {
  readonly design: Design;
  readonly jobId?: string | undefined;
  readonly jobName: string;
  readonly customer: string;
}

/** Keeps a first design on the server: customer and job where they are new, then the design. */
export async function keepStart({ design, jobId, jobName, customer }: ToKeep): Promise<Kept> {
  let job = jobId;
  if (job === undefined) {
    let customerId: string | undefined;
    if (customer !== "") {
      const made = await ask(routes.createCustomer, { body: { name: customer } });
      if (!made.ok) return refusal(made);
      customerId = made.value.id;
    }
    const made = await ask(routes.createJob, {
      body: { name: jobName, stage: "designing", ...(customerId ? { customerId } : {}) },
    });
    if (!made.ok) return refusal(made);
    job = made.value.id;
  }
  const made = await ask(routes.createDesign, {
    params: { jobId: job },
    body: { name: design.name, document: design },
  });
  return made.ok ? { ok: true, designId: made.value.id } : refusal(made);
}

function refusal(
  answer: { readonly reason: "unreachable" } | { readonly reason: "refused"; readonly problem: ProblemDetails },
): Kept {
  return answer.reason === "unreachable"
    ? { ok: false, reason: "unreachable" }
    : { ok: false, reason: "refused", detail: refusedWords(answer.problem, words()) };
}
