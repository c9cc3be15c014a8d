import { demoCatalogue } from "@tidewright/catalogue";
import {
  checkDesign,
  type Design,
  endDrag,
  type History,
  record,
  redoMine,
  sameJson,
  startHistory,
  undoMine,
} from "@tidewright/design";
import { storeChange } from "@tidewright/protocol";
import type { Told } from "../../src/keeping/changes.ts";
import { type DesignServer, designServer } from "../../src/keeping/designServer.ts";
import { joinDesigns } from "../../src/keeping/joinDesigns.ts";
import { type Keeper, type KeeperState, keep } from "../../src/keeping/keeper.ts";
import type { LocalCopies, LocalCopy } from "../../src/keeping/localCopies.ts";
import { newId } from "../../src/keeping/newId.ts";
import { startOutbox } from "../../src/keeping/outbox.ts";
import { BrokenLine, over } from "./brokenLine.ts";
import { type CellChange, cellChanges } from "./cells.ts";
import { trialEdit } from "./trialEdits.ts";

/** A change of a place that this editor made by hand. */
export type Made = CellChange & { readonly at: number };

/** A revision that the server acknowledged to this editor. */
export interface AcknowledgedWork {
  readonly designId: string;
  readonly revision: number;
  readonly editId: string | undefined;
  readonly document: Design;
}

const pause = (milliseconds: number) => new Promise<void>((done) => setTimeout(done, milliseconds));

let marks = 0;

/** Somebody at a design, with the product's own keeping behind a line that breaks: edits, drags, takes back, is set apart,
 *  comes back, and at times the page is killed and opened again from what the device had written. */
export class TrialEditor {
  readonly line = new BrokenLine();
  readonly made: Made[] = [];
  readonly acknowledged: AcknowledgedWork[] = [];
  /** Every edit and variant that was sent, also those never answered. */
  readonly sent = new Set<string>();
  readonly counts = { edits: 0, undone: 0, late: 0, apart: 0, killed: 0, refusedEdits: 0 };
  private readonly home: string;
  private readonly ended = new AbortController();
  private readonly hearers = new Set<(told: Told) => void>();
  private history: History<Design> | undefined;
  private watchers = new Set<() => void>();
  private handBusy = false;
  private keeper: Keeper | undefined;
  private state: KeeperState | undefined;
  private written: LocalCopy | undefined;
  /** Counts the pages of this editor; what an earlier page still does comes to nothing. */
  private page = 0;

  constructor(address: string, home: string) {
    this.home = home;
    void this.line.listen(
      new URL("api/events", address),
      this.ended.signal,
      () => this.tell({ kind: "lineBack" }),
      (data) => this.tell(storeChange.parse(JSON.parse(data))),
    );
  }

  /** The document on the table. */
  get present(): Design {
    return this.history!.present;
  }

  /** How things stand with it. */
  get standing(): KeeperState {
    return this.state!;
  }

  private tell(told: Told): void {
    for (const hear of this.hearers) hear(told);
  }

  /** Opens the design as a page does that has nothing of it yet. */
  async open(): Promise<void> {
    for (;;) {
      const opened = await over(this.line, () => designServer.open(this.home));
      if (opened.ok) {
        const { head, latest } = opened;
        this.lay({
          key: newId(),
          designId: head.id,
          surroundings: { head, job: undefined, siblings: [head] },
          outbox: startOutbox({ revision: latest.revision, document: latest.document }),
          makers: [],
          history: startHistory(latest.document),
        });
        return;
      }
      if (opened.event.kind === "stopped") throw new Error(`cannot be opened: ${JSON.stringify(opened.event.stop)}`);
      await pause(300);
    }
  }

  private lay(copy: LocalCopy): void {
    const page = ++this.page;
    const alive = () => page === this.page;
    this.history = copy.history;
    this.watchers = new Set();
    const copies = {
      write: async (row: LocalCopy) => {
        await pause(Math.random() * 20);
        if (alive()) this.written = row;
      },
    } as LocalCopies;
    this.keeper = keep(copy, {
      server: this.server(alive),
      copies,
      means: { newId, random: Math.random, same: sameJson, merge: joinDesigns, nameApart: () => "kept apart" },
      table: {
        history: () => this.history!,
        lay: (history) => {
          if (!alive()) return;
          this.history = history;
          for (const each of this.watchers) each();
        },
        watch: (listener) => {
          const { watchers } = this;
          watchers.add(listener);
          return () => watchers.delete(listener);
        },
        busy: () => this.handBusy,
      },
      maker: () => ({ who: "thisMachine" }),
      labelOf: () => "somebody else",
      report: (state) => {
        if (alive()) this.state = state;
      },
      takenIn: () => {},
      setApart: () => {
        this.counts.apart += 1;
      },
      onChange: (hear) => {
        this.hearers.add(hear);
        return () => this.hearers.delete(hear);
      },
    });
  }

  /** The product's own way to the server, over the line, with a note of what was sent and acknowledged. */
  private server(alive: () => boolean): DesignServer {
    const never = () => new Promise<never>(() => {});
    const asked = async <Value>(work: () => Promise<Value>): Promise<Value> => {
      if (!alive()) return never();
      const answer = await over(this.line, work);
      return alive() ? answer : never();
    };
    return {
      append: async (designId, parcel) => {
        this.sent.add(parcel.editId);
        const answer = await asked(() => designServer.append(designId, parcel));
        const { editId, document } = parcel;
        if (answer.kind === "accepted")
          this.acknowledged.push({ designId, revision: answer.revision, editId, document });
        else if (answer.kind === "theirs" && answer.theirs.editId === editId)
          this.acknowledged.push({ designId, revision: answer.theirs.revision, editId, document });
        else if (answer.kind === "theirs") this.counts.late += 1;
        return answer;
      },
      setApart: async (designId, parcel) => {
        this.sent.add(parcel.designId);
        const answer = await asked(() => designServer.setApart(designId, parcel));
        if (answer.kind === "accepted") {
          const { document } = parcel;
          this.acknowledged.push({ designId: parcel.designId, revision: 1, editId: undefined, document });
        }
        return answer;
      },
      open: (designId) => asked(() => designServer.open(designId)),
      surroundings: (head) => asked(() => designServer.surroundings(head)),
    };
  }

  /** Lays a history that this editor's own hand has made. */
  private change(history: History<Design>): void {
    if (history === this.history) return;
    const at = performance.now();
    this.made.push(...cellChanges(this.present, history.present).map((change) => ({ ...change, at })));
    this.history = history;
    for (const each of this.watchers) each();
  }

  private edit(key?: string): void {
    const { history, problem } = record(this.history!, trialEdit(this.present, ++marks), "an edit", key);
    // The bench refuses what is no sound design; so does this hand.
    if (problem !== undefined || !checkDesign(history.present, demoCatalogue).ok) this.counts.refusedEdits += 1;
    else {
      this.counts.edits += 1;
      this.change(history);
    }
  }

  private async drag(): Promise<void> {
    this.handBusy = true;
    for (let move = 0; move < 4; move++) {
      this.edit("a drag");
      await pause(80);
    }
    this.handBusy = false;
    this.change(endDrag(this.history!));
  }

  private turnBack(): void {
    const { history } = Math.random() < 0.7 ? undoMine(this.history!) : redoMine(this.history!);
    if (!checkDesign(history.present, demoCatalogue).ok) return;
    if (history !== this.history) this.counts.undone += 1;
    this.change(history);
  }

  /** The page is gone from one moment to the next; what the device had written opens again. */
  private async die(): Promise<void> {
    await this.keeper!.written();
    this.page += 1;
    this.hearers.clear();
    this.counts.killed += 1;
    await pause(Math.random() * 500);
    this.lay(this.written!);
  }

  /** Leaves a variant that this editor was set apart to, once the server has all of it. */
  private async comeHome(): Promise<void> {
    if (this.standing.designId === this.home || this.standing.outbox.phase !== "kept") return;
    await this.keeper!.written();
    if (this.standing.designId === this.home || this.standing.outbox.phase !== "kept") return;
    this.keeper!.stop();
    await this.open();
  }

  /** Works until a time, about one edit in `pace`. */
  async work(until: number, pace: number): Promise<void> {
    while (performance.now() < until) {
      await pause(pace * (0.3 + Math.random() * 1.4));
      const what = Math.random();
      if (what < 0.03) await this.die();
      else if (what < 0.12) this.turnBack();
      else if (what < 0.2) await this.drag();
      else this.edit();
      if (Math.random() < 0.5) await this.comeHome();
    }
    await this.keeper!.written();
  }

  stop(): void {
    this.keeper?.stop();
    this.ended.abort();
  }
}
