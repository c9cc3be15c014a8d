import { type Design, type History, takeIn } from "@tidewright/design";
import { isOwnWork, type Maker, withMaker } from "../state/maker.ts";
import type { Told } from "./changes.ts";
import type { DesignServer } from "./designServer.ts";
import { diskWrites } from "./diskWrites.ts";
import type { LocalCopies, LocalCopy, Surroundings } from "./localCopies.ts";
import {
  type ApartParcel,
  advance,
  type Outbox,
  type OutboxCommand,
  type OutboxEvent,
  type OutboxMeans,
  type Theirs,
} from "./outbox.ts";

/** The table that a design lies on while it is worked on. */
export interface Table {
  history(): History<Design>;
  /** Lays a history on the table that has taken in what somebody else did. */
  lay(history: History<Design>): void;
  /** Tells of every change of the history, by whomever; returns how to stop it. */
  watch(listener: () => void): () => void;
  /** True while a hand moves something: nothing is laid under it. */
  busy(): boolean;
}

/** Everything a keeper needs, handed in so that it can be tried without page and server. */
export interface KeeperWorld {
  readonly server: DesignServer;
  readonly copies: LocalCopies;
  readonly means: OutboxMeans<Design>;
  readonly table: Table;
  /** Who makes the edits of this moment, and under whose name they would be sent. */
  maker(): Maker;
  /** How long the disk may take [ms]. */
  readonly diskPatience?: number;
  /** Words for the step that takes in what somebody else did. */
  labelOf(theirs: Theirs<Design>): string;
  /** Hears of the state after each change of it. */
  report(state: KeeperState): void;
  /** Somebody else's work lies on the table now; `before` is the document both began with. */
  takenIn(theirs: Theirs<Design>, before: Design): void;
  setApart(from: Surroundings, parcel: ApartParcel<Design>): void;
  onChange(listener: (told: Told) => void): () => void;
}

/** How things stand with a design. `writing` while something is not on this device's disk yet; `onDisk` false where it
 *  could not be written there, as on a disk that is full; `makers` whose work it is that waits. */
export interface KeeperState {
  readonly key: string;
  readonly designId: string;
  readonly surroundings: Surroundings;
  readonly outbox: Outbox<Design>;
  readonly makers: readonly Maker[];
  readonly writing: boolean;
  readonly onDisk: boolean;
  readonly reached: boolean;
}

export interface Keeper {
  /** Tries at once whatever waits, such as after signing in. */
  nudge(): void;
  /** Whoever is here now sends what waits as their own, whoever made it. */
  adopt(): void;
  /** Done once everything is on this device's disk, or the disk has shown that it does not take it. */
  written(): Promise<void>;
  stop(): void;
}

/** Quiet time after which a drag that nobody has ended counts as a step: a slider under the arrow keys [ms]. */
const dragSettles = 700;
/** How often it is looked whether the hand has let go [ms]. */
const calmCheck = 60;
/** Time until what could not be read is read again [ms]; each failure after another doubles it up to the most. */
const readAgain = { first: 1000, most: 60_000 };

/** Keeps a design: every finished step is written down on this device, then sent, and what others do comes in. */
export function keep(copy: LocalCopy, world: KeeperWorld): Keeper {
  const { server, copies, means, table } = world;
  let { designId, surroundings, outbox, makers } = copy;
  /** The history that belongs to `outbox.present`; the table may be ahead of it by a drag. */
  let history = copy.history;
  let reached = true;
  let newest = outbox.acknowledged.revision;
  let stopped = false;
  /** Nothing may be written any more: another page may have the copy. */
  let over = false;
  let settling: ReturnType<typeof setTimeout> | undefined;
  let retrying: ReturnType<typeof setTimeout> | undefined;
  let refreshing: Promise<void> | undefined;
  let looking: ReturnType<typeof setTimeout> | undefined;
  let missed = 0;

  const disk = diskWrites<LocalCopy>(
    async (row) => {
      if (!over) await copies.write(row);
    },
    () => report(),
    world.diskPatience,
  );
  const report = () =>
    world.report({
      key: copy.key,
      designId,
      surroundings,
      outbox,
      makers,
      writing: disk.writing(),
      onDisk: disk.onDisk(),
      reached,
    });

  const write = () => disk.write({ key: copy.key, designId, surroundings, outbox, makers, history });

  /** Another's work waits for them, or for a word of whoever is here now. */
  const isAnothers = () => !isOwnWork(makers, world.maker());
  const another: OutboxEvent<Design> = { kind: "stopped", stop: { why: "another" } };

  const handle = (given: OutboxEvent<Design>): void => {
    if (stopped) return;
    const held = given.kind === "send" && isAnothers();
    if (held && outbox.stop?.why === "another") return;
    const event = held ? another : given;
    const base = outbox.acknowledged.document;
    const advanced = advance(outbox, event, means);
    if (advanced.outbox === outbox && advanced.commands.length === 0) return;
    outbox = advanced.outbox;
    if (outbox.phase === "kept") makers = [];
    const later = advanced.commands.filter((command) => now(command, base));
    const safe = write();
    report();
    if (later.length > 0) void safe.then(() => later.forEach(run));
    if (outbox.phase === "kept" && newest > outbox.acknowledged.revision) void refresh();
  };

  /** Does what concerns the table at once and says whether the command has to wait until the outbox is written down. */
  const now = (command: OutboxCommand<Design>, base: Design): boolean => {
    if (command.kind === "takeIn") {
      newest = Math.max(newest, command.theirs.revision);
      if (command.document === command.before) return false;
      history = takeIn(table.history(), command.document, world.labelOf(command.theirs));
      table.lay(history);
      world.takenIn(command.theirs, base);
      return false;
    }
    if (command.kind === "setApart") {
      const from = surroundings;
      const { parcel } = command;
      designId = parcel.designId;
      newest = 1;
      surroundings = { ...from, head: apartHead(from, parcel), siblings: [...from.siblings, apartHead(from, parcel)] };
      world.setApart(from, parcel);
      void lookAround();
      return false;
    }
    return true;
  };

  const run = (command: OutboxCommand<Design>): void => {
    if (command.kind === "retry") {
      clearTimeout(retrying);
      retrying = setTimeout(() => handle({ kind: "send" }), command.after);
    } else if (command.kind === "post") void post(command.parcel);
  };

  const post = async (parcel: Extract<OutboxCommand<Design>, { kind: "post" }>["parcel"]): Promise<void> => {
    clearTimeout(retrying);
    if (isAnothers()) {
      handle(another);
      return;
    }
    const answer =
      parcel.kind === "revision" ? await server.append(designId, parcel) : await server.setApart(designId, parcel);
    reached = answer.kind !== "unreachable";
    if (answer.kind === "theirs") await calm();
    if (outbox.parcel === parcel || answer.kind !== "accepted") handle(answer);
  };

  /** Waits until no hand moves anything, then takes what it did. */
  const calm = async (): Promise<void> => {
    while (table.busy()) await new Promise((done) => setTimeout(done, calmCheck));
    take();
  };

  const take = (): void => {
    clearTimeout(settling);
    const fresh = table.history();
    if (fresh.present === outbox.present) return;
    history = fresh;
    makers = withMaker(makers, world.maker());
    handle({ kind: "changed", present: fresh.present });
  };

  const watch = (): void => {
    const fresh = table.history();
    if (fresh.present === outbox.present) {
      history = fresh;
      return;
    }
    clearTimeout(settling);
    if (fresh.past.at(-1)?.key === undefined) take();
    else settling = setTimeout(() => (table.busy() ? watch() : take()), dragSettles);
  };

  /** Reads what the server has now; what is newer comes in. */
  const refresh = (): Promise<void> => {
    refreshing ??= (async () => {
      const heard = newest;
      const opened = await server.open(designId);
      refreshing = undefined;
      if (stopped) return;
      reached = opened.ok || opened.event.kind !== "unreachable";
      if (!opened.ok) {
        // Reading failed; what waits to be sent says so itself when it is sent.
        if (opened.event.kind === "stopped" && outbox.phase !== "sending") handle(opened.event);
        else report();
        // The line that tells of changes may be up all the while, so nothing else would bring this to mind again.
        if (!reached) lookLater(Math.min(readAgain.most, readAgain.first * 2 ** missed++));
        return;
      }
      missed = 0;
      await calm();
      if (opened.head.id !== designId) return;
      surroundings = { ...surroundings, head: opened.head };
      // What was told while the answer was under way may not be in it.
      if (newest > heard && newest > opened.latest.revision) lookLater(0);
      else newest = opened.latest.revision;
      const { acknowledged, parcel, phase } = outbox;
      if (phase === "sending") return;
      if (parcel !== undefined || phase === "stopped") handle({ kind: "send" });
      else if (
        opened.latest.revision > acknowledged.revision ||
        // The same revision, changed by an erasure: what was taken away must not come back from here.
        (opened.latest.revision === acknowledged.revision && !means.same(opened.latest.document, acknowledged.document))
      )
        handle({ kind: "theirs", theirs: opened.latest, parted: isParted(opened.latest) });
      else if (phase === "waiting") handle({ kind: "send" });
      report();
    })();
    return refreshing;
  };

  /** Whether the server has another revision of the number that it had acknowledged, and something was made here: then this
   *  device holds what the server has lost. */
  const isParted = ({ revision, mark }: Theirs<Design>): boolean => {
    const { acknowledged } = outbox;
    if (acknowledged.mark === undefined || revision !== acknowledged.revision || mark === acknowledged.mark)
      return false;
    return history.past.some(({ others }) => others === undefined);
  };

  const lookLater = (after: number): void => {
    clearTimeout(looking);
    looking = setTimeout(() => {
      if (!stopped && outbox.phase !== "sending") void refresh();
    }, after);
  };

  const lookAround = async (): Promise<void> => {
    surroundings = { ...surroundings, ...(await server.surroundings(surroundings.head)) };
    if (stopped) return;
    void write();
    report();
  };

  const hear = (told: Told): void => {
    if (told.kind === "design" && told.id === designId) {
      newest = Math.max(newest, told.revision);
      if (told.revision > outbox.acknowledged.revision && outbox.phase !== "sending") void refresh();
    } else if (told.kind === "design" && told.jobId === surroundings.head.jobId) void lookAround();
    else if (told.kind === "job" && told.id === surroundings.head.jobId) void lookAround();
    else if (told.kind === "lineBack" || told.kind === "erasure") nudge();
  };

  const nudge = (): void => {
    if (outbox.phase === "waiting" || outbox.stop?.why === "another") handle({ kind: "send" });
    else if (outbox.phase !== "sending") void refresh();
  };

  const ends = [table.watch(watch), world.onChange(hear)];
  // What a kill or a reload has left under way is asked again, and what others did meanwhile is read.
  if (outbox.phase === "sending" || outbox.phase === "waiting") {
    outbox = { ...outbox, phase: "waiting" };
    handle({ kind: "send" });
  } else void write();
  nudge();
  void lookAround();
  report();

  return {
    nudge,
    adopt() {
      makers = [world.maker()];
      handle({ kind: "send" });
    },
    written: () => {
      if (!stopped) take();
      return disk.written();
    },
    stop() {
      take();
      stopped = true;
      void disk.written().then(() => {
        over = true;
      });
      clearTimeout(settling);
      clearTimeout(retrying);
      clearTimeout(looking);
      for (const end of ends) end();
    },
  };
}

/** The head of a variant before the server has been asked about it. */
function apartHead({ head }: Surroundings, parcel: ApartParcel<Design>): Surroundings["head"] {
  return {
    ...head,
    id: parcel.designId,
    name: parcel.name,
    revision: 1,
    variantOf: { designId: head.id, revision: parcel.base },
  };
}
