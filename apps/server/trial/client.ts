import type { Revision, RevisionEntry } from "@tidewright/protocol";

/** A revision that the server has acknowledged, and the document that was sent. */
export interface Acknowledged {
  readonly designId: string;
  readonly number: number;
  readonly editId: string;
  readonly document: unknown;
}

/** Asks the server as a screen of ours does; throws where the line breaks, and where it refuses. */
export async function askServer<Value>(
  address: string,
  method: string,
  path: string,
  body?: unknown,
  version?: number,
): Promise<Value> {
  const response = await sent(address, method, path, body, version);
  const text = await response.text();
  if (!response.ok) throw new Refusal(response.status, `${method} ${path}: ${response.status} ${text.slice(0, 500)}`);
  return JSON.parse(text) as Value;
}

/** The server was reached and said no. */
class Refusal extends Error {
  readonly status: number;
  constructor(status: number, message: string) {
    super(message);
    this.status = status;
  }
}

function sent(address: string, method: string, path: string, body: unknown, version: number | undefined) {
  return fetch(new URL(path, address), {
    method,
    headers: {
      "X-Tidewright": "1",
      ...(body === undefined ? {} : { "Content-Type": "application/json" }),
      ...(version === undefined ? {} : { "If-Match": `"${version}"` }),
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
}

/** One writer: sends edits without end, each again until it is acknowledged, and notes what was acknowledged. What it had
 *  under way when the server died it sends again to the next one, under the same id. */
export class Client {
  readonly designId: string;
  readonly name: string;
  readonly acknowledged: Acknowledged[] = [];
  readonly commitTimes: number[] = [];
  private readonly document: Readonly<Record<string, unknown>>;
  private underWay: { readonly editId: string; readonly document: unknown } | undefined;
  private base: number;
  private count = 0;

  constructor(name: string, designId: string, document: Readonly<Record<string, unknown>>) {
    this.name = name;
    this.designId = designId;
    this.document = document;
    this.base = 1;
  }

  /** Writes until the server is gone; `first` hears of the first acknowledgement.
   *  Throws: where the server refuses what it should not. */
  async write(address: string, first: () => void): Promise<void> {
    for (;;) {
      this.underWay ??= {
        editId: crypto.randomUUID(),
        document: { ...this.document, notes: `${this.name} ${++this.count} ${crypto.randomUUID()}` },
      };
      const { editId, document } = this.underWay;
      const started = performance.now();
      let response: Response;
      let answer: unknown;
      try {
        response = await sent(
          address,
          "POST",
          `api/designs/${this.designId}/revisions`,
          { editId, document },
          this.base,
        );
        answer = await response.json();
      } catch {
        return;
      }
      if (response.status === 412) this.base = (answer as { current: Revision }).current.number;
      else if (response.ok) {
        const { number } = answer as RevisionEntry;
        this.commitTimes.push(performance.now() - started);
        this.acknowledged.push({ designId: this.designId, number, editId, document });
        this.base = Math.max(this.base, number);
        this.underWay = undefined;
        first();
      } else throw new Error(`${response.status}: ${JSON.stringify(answer).slice(0, 500)}`);
    }
  }
}
