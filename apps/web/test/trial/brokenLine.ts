import { AsyncLocalStorage } from "node:async_hooks";

/** What a line did to its requests, by name. */
export interface Cuts {
  /** Never reached the server. */
  unsent: number;
  /** The server acted, and nobody heard of it. */
  unheard: number;
  /** The answer broke off in the middle. */
  torn: number;
  /** Reached the server twice. */
  doubled: number;
  /** Times without any line. */
  dark: number;
}

const chance = (share: number): boolean => Math.random() < share;
const pause = (milliseconds: number) => new Promise<void>((done) => setTimeout(done, milliseconds));

/** One editor's way to the server, which breaks by chance until it is healed: requests are lost before they are sent,
 *  answers after the server has acted, both come late, and at times there is no line at all. */
export class BrokenLine {
  readonly cuts: Cuts = { unsent: 0, unheard: 0, torn: 0, doubled: 0, dark: 0 };
  private healed = false;
  private dark = false;
  private readonly darkens = new Set<() => void>();
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    this.later();
  }

  /** Between times without a line some seconds pass, and each lasts some seconds. */
  private later(): void {
    this.timer = setTimeout(
      () => {
        this.dark = true;
        this.cuts.dark += 1;
        for (const each of this.darkens) each();
        this.timer = setTimeout(
          () => {
            this.dark = false;
            this.later();
          },
          500 + Math.random() * 6000,
        );
      },
      1000 + Math.random() * 12_000,
    );
  }

  /** From now on everything arrives. */
  heal(): void {
    clearTimeout(this.timer);
    this.healed = true;
    this.dark = false;
  }

  /** Asks over this line. */
  async fetch(url: URL, init: RequestInit | undefined): Promise<Response> {
    if (this.healed) return plainFetch(url, init);
    await pause(Math.random() * (chance(0.05) ? 1500 : 80));
    if (this.dark || chance(0.06)) {
      this.cuts.unsent += 1;
      throw new TypeError("the line is cut");
    }
    if (chance(0.02)) {
      this.cuts.doubled += 1;
      void plainFetch(url, init).then(
        (response) => response.arrayBuffer(),
        () => undefined,
      );
    }
    const response = await plainFetch(url, init);
    const text = await response.text();
    await pause(Math.random() * (chance(0.05) ? 1500 : 80));
    if (this.dark || chance(0.06)) {
      this.cuts.unheard += 1;
      throw new TypeError("the line was cut before the answer came");
    }
    const { status, headers } = response;
    if (!chance(0.02)) return new Response(text, { status, headers });
    this.cuts.torn += 1;
    return new Response(text.slice(0, Math.floor(Math.random() * text.length)), { status, headers });
  }

  /** Listens to the stream of events as a browser does, over and over, until `ended`; `hear` gets the data of each change,
   *  `back` is told when the line stands again. */
  async listen(url: URL, ended: AbortSignal, back: () => void, hear: (data: string) => void): Promise<void> {
    while (!ended.aborted) {
      const cut = new AbortController();
      const end = () => cut.abort();
      this.darkens.add(end);
      ended.addEventListener("abort", end);
      try {
        if (this.dark) throw new TypeError("the line is cut");
        const response = await plainFetch(url, { signal: cut.signal });
        const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
        back();
        let pending = "";
        for (;;) {
          const { value, done } = await reader.read();
          if (done) break;
          const events = (pending + value).split("\n\n");
          pending = events.pop() ?? "";
          for (const event of events) {
            const data = /^event: change$/m.test(event) ? /^data: (.*)$/m.exec(event)?.[1] : undefined;
            if (data !== undefined) hear(data);
          }
        }
      } catch {
        // Cut; tried again below.
      }
      this.darkens.delete(end);
      ended.removeEventListener("abort", end);
      if (!ended.aborted) await pause(500 + Math.random() * 2500);
    }
  }
}

let plainFetch = globalThis.fetch;
const lines = new AsyncLocalStorage<BrokenLine>();

/** Does something whose requests go over a line. */
export function over<Value>(line: BrokenLine, work: () => Promise<Value>): Promise<Value> {
  return lines.run(line, work);
}

/** Lets the product's own client, which asks at addresses relative to its page, ask a server over the line of whoever
 *  asks; returns what ends that.
 *  address of the server, with a slash at its end   -> the ending */
export function layLines(address: string): () => void {
  plainFetch = globalThis.fetch;
  globalThis.fetch = (input, init) => {
    const line = lines.getStore();
    if (line === undefined || typeof input !== "string") return plainFetch(input, init);
    return line.fetch(new URL(input, address), init);
  };
  return () => {
    globalThis.fetch = plainFetch;
  };
}
