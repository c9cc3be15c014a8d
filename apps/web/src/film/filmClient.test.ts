import type { SafetySweep, Scenario, WhatIf } from "@tidewright/advice";
import { demoCatalogue, findPump } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { takeRows } from "../catalogue/shopRows.ts";
import { startFilm } from "./filmClient.ts";
import type { FilmAnswer, FilmRequest } from "./filmProtocol.ts";

/** A worker that answers when the test says so. */
class HandWorker {
  static all: HandWorker[] = [];
  onmessage: ((event: { readonly data: FilmAnswer }) => void) | undefined;
  readonly asked: FilmRequest[] = [];
  ended = false;
  constructor() {
    HandWorker.all.push(this);
  }
  postMessage(request: FilmRequest): void {
    this.asked.push(request);
  }
  terminate(): void {
    this.ended = true;
  }
  answer(data: FilmAnswer): void {
    this.onmessage?.({ data });
  }
}

const [first, second] = [{ name: "first" }, { name: "second" }] as unknown as Design[];
const cut = { id: "powerCut" } as Scenario;
const listeners = () => ({ played: vi.fn(), progress: vi.fn(), swept: vi.fn(), levered: vi.fn(), fault: vi.fn() });

describe("the page's end of the simulating workers", () => {
  beforeEach(() => {
    HandWorker.all = [];
    takeRows([]);
    vi.stubGlobal("Worker", HandWorker);
  });
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  it("breaks a sweep off when another document is to be swept, and hears no more of the old one", () => {
    const heard = listeners();
    const client = startFilm(heard);
    client.sweep(first!);
    const old = HandWorker.all[1]!;
    client.sweep(second!);
    expect(old.ended).toBe(true);
    const now = HandWorker.all[2]!;
    old.answer({ kind: "sweep", id: old.asked[0]!.id, result: {} as SafetySweep });
    old.answer({ kind: "progress", id: old.asked[0]!.id, done: 1, of: 2 });
    expect(heard.swept).not.toHaveBeenCalled();
    expect(heard.progress).not.toHaveBeenCalled();
    const result = {} as SafetySweep;
    now.answer({ kind: "sweep", id: now.asked[0]!.id, result });
    expect(heard.swept).toHaveBeenCalledExactlyOnceWith(second, result);
  });

  it("plays and sweeps anew with other pumps, and shows nothing that was reckoned with those of before", () => {
    const heard = listeners();
    const client = startFilm(heard);
    client.whatIf(first!, cut);
    client.sweep(first!);
    const [player, old] = HandWorker.all;
    takeRows([{ id: "house-1", data: findPump(demoCatalogue, "ferrow-c40") }]);
    client.sweep(first!);
    expect(old!.ended).toBe(true);
    player!.answer({ kind: "whatIf", id: player!.asked[0]!.id, result: {} as WhatIf });
    expect(heard.played).not.toHaveBeenCalled();
    client.whatIf(first!, cut);
    for (const worker of [player!, HandWorker.all[2]!])
      expect(worker.asked.slice(-2)).toMatchObject([
        { kind: "catalogue", pumps: [{ id: "house-1" }] },
        { id: expect.any(Number) },
      ]);
    const result = {} as WhatIf;
    player!.answer({ kind: "whatIf", id: player!.asked.at(-1)!.id, result });
    expect(heard.played).toHaveBeenCalledExactlyOnceWith(first, cut, result);
  });

  it("lets a sweep of the very same document run on", () => {
    const client = startFilm(listeners());
    client.sweep(first!);
    client.dropOthers(first!);
    expect(HandWorker.all[1]!.ended).toBe(false);
    client.dropOthers(second!);
    expect(HandWorker.all[1]!.ended).toBe(true);
  });

  it("pairs a film with the very document that was asked about", () => {
    const heard = listeners();
    startFilm(heard).whatIf(first!, cut);
    const player = HandWorker.all[0]!;
    const result = {} as WhatIf;
    player.answer({ kind: "whatIf", id: player.asked[0]!.id, result });
    expect(heard.played).toHaveBeenCalledOnce();
    expect(heard.played.mock.calls[0]?.[0]).toBe(first);
  });

  it("goes on after a fault: the next film is still asked for", () => {
    const heard = listeners();
    const client = startFilm(heard);
    const player = HandWorker.all[0]!;
    client.whatIf(first!, cut);
    client.whatIf(second!, cut);
    expect(player.asked).toHaveLength(1);
    player.answer({ kind: "fault", id: player.asked[0]!.id, asked: "whatIf", message: "broken" });
    expect(heard.fault).toHaveBeenCalledWith("whatIf", "broken");
    expect(player.asked).toHaveLength(2);
  });
});
