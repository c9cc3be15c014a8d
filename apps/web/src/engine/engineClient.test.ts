import type { Assessment, Ranking } from "@tidewright/advice";
import { demoCatalogue, findPump } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { CatalogueMessage } from "../catalogue/catalogueMessage.ts";
import { takeRows } from "../catalogue/shopRows.ts";
import { startEngine } from "./engineClient.ts";
import type { EngineAnswer, EngineRequest } from "./protocol.ts";

/** A worker that answers when the test says so. */
class HandWorker {
  static all: HandWorker[] = [];
  onmessage: ((event: { readonly data: EngineAnswer }) => void) | undefined;
  readonly heard: (EngineRequest | CatalogueMessage)[] = [];
  constructor() {
    HandWorker.all.push(this);
  }
  postMessage(message: EngineRequest | CatalogueMessage): void {
    this.heard.push(message);
  }
  kinds(): string[] {
    return this.heard.map(({ kind }) => kind);
  }
  lastId(): number {
    const last = this.heard.at(-1);
    return last !== undefined && "id" in last ? last.id : -1;
  }
  answer(data: EngineAnswer): void {
    this.onmessage?.({ data });
  }
}

const design = { name: "reef" } as Design;
const house = { id: "house-1", data: findPump(demoCatalogue, "ferrow-c40")! };
const assessment = (name: string) => ({ name }) as unknown as Assessment;
const listeners = () => ({ assessed: vi.fn(), ranked: vi.fn(), levered: vi.fn(), fault: vi.fn() });

describe("the page's end of the assessing workers", () => {
  beforeEach(() => {
    HandWorker.all = [];
    takeRows([]);
    vi.stubGlobal("Worker", HandWorker);
  });
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  it("tells each worker of the shop's pumps before the question that needs them", () => {
    takeRows([house]);
    const engine = startEngine(listeners());
    const [quick, thorough] = HandWorker.all;
    engine.assess(design);
    engine.rank(design, {});
    expect(quick!.kinds()).toEqual(["catalogue", "assess"]);
    expect(thorough!.kinds()).toEqual(["catalogue", "rank"]);
    expect(quick!.heard[0]).toMatchObject({ pumps: [{ id: "house-1" }] });
  });

  it("shows no answer that was reckoned with an older catalogue, and asks what waited with the newer one", () => {
    const heard = listeners();
    const engine = startEngine(heard);
    const [quick, thorough] = HandWorker.all;
    engine.assess(design);
    engine.rank(design, {});
    const [oldAssess, oldRank] = [quick!.lastId(), thorough!.lastId()];
    takeRows([house]);
    engine.assess(design);
    // The first question is still being answered, so the second waits, and the worker is told of nothing yet.
    expect(quick!.kinds()).toEqual(["assess"]);
    quick!.answer({ kind: "assess", id: oldAssess, took: 1, result: assessment("old") });
    thorough!.answer({ kind: "rank", id: oldRank, took: 1, result: {} as Ranking });
    expect(heard.assessed).not.toHaveBeenCalled();
    expect(heard.ranked).not.toHaveBeenCalled();
    expect(quick!.kinds()).toEqual(["assess", "catalogue", "assess"]);
    const result = assessment("new");
    quick!.answer({ kind: "assess", id: quick!.lastId(), took: 1, result });
    expect(heard.assessed).toHaveBeenCalledExactlyOnceWith(design, result, 1);
  });
});
