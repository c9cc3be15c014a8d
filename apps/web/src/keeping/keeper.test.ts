import { applyEdit, type Design, type History, record, sameJson, startHistory, undoMine } from "@tidewright/design";
import type { DesignHead } from "@tidewright/protocol";
import { englishWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { demoJobs } from "../document/demoJobs.ts";
import type { Maker } from "../state/maker.ts";
import type { Told } from "./changes.ts";
import type { DesignServer } from "./designServer.ts";
import { joinDesigns } from "./joinDesigns.ts";
import { type KeeperState, keep } from "./keeper.ts";
import { keepingWord } from "./keepingWord.ts";
import type { LocalCopies, LocalCopy } from "./localCopies.ts";
import { startOutbox, type Theirs } from "./outbox.ts";

const design = demoJobs[0]!.design;
const head = (id: string): DesignHead => ({
  id,
  jobId: "job",
  name: "As drawn",
  revision: 1,
  variantOf: null,
  createdAt: "2026-01-01T00:00:00.000Z",
  createdBy: "",
  updatedAt: "2026-01-01T00:00:00.000Z",
});

/** A server of lines of revisions, as the store is, that can be out of reach. */
function fakeServer() {
  const asked: string[] = [];
  const lines = new Map<string, Theirs<Design>[]>([
    ["d", [{ revision: 1, document: design, author: "Ina", editId: null, mark: "first" }]],
  ]);
  const state = { reached: true };
  const latest = (id: string) => lines.get(id)!.at(-1)!;
  const server: DesignServer = {
    async append(id, { editId, base, madeFrom, document }) {
      asked.push(id);
      if (!state.reached) return { kind: "unreachable" };
      const known = lines.get(id)!.find((one) => one.editId === editId);
      if (known !== undefined) return { kind: "accepted", revision: known.revision };
      const at = lines.get(id)!.find((one) => one.revision === base);
      const parted = madeFrom !== undefined && at?.mark !== madeFrom;
      if (parted || base !== latest(id).revision) return { kind: "theirs", theirs: latest(id), parted };
      lines.get(id)!.push({ revision: base + 1, document, author: "Me", editId, mark: editId });
      return { kind: "accepted", revision: base + 1, mark: editId };
    },
    async setApart(_id, parcel) {
      if (!state.reached) return { kind: "unreachable" };
      lines.set(parcel.designId, [{ revision: 1, document: parcel.document, author: "Me", editId: null }]);
      return { kind: "accepted", revision: 1 };
    },
    open: async (id) =>
      state.reached ? { ok: true, head: head(id), latest: latest(id) } : { ok: false, event: { kind: "unreachable" } },
    surroundings: async () => ({}),
  };
  const others = (path: string, value: unknown) => {
    const { revision, document } = latest("d");
    const changed = applyEdit(document, { op: "set", path, value }).design;
    const mark = `others ${++ids}`;
    lines.get("d")!.push({ revision: revision + 1, document: changed, author: "Ina", editId: null, mark });
  };
  return { server, state, lines, latest, others, asked };
}

let ids = 0;

/** A page with a design on its table, over a device that keeps what it is told; `from` is what it kept before. */
function openPage(
  world: ReturnType<typeof fakeServer>,
  from?: LocalCopy,
  room: { left: boolean; hangs?: boolean } = { left: true },
  here: { who: Maker } = { who: { who: "thisMachine" } },
) {
  const copy: LocalCopy = from ?? {
    key: "d/1",
    designId: "d",
    surroundings: { head: head("d"), job: undefined, siblings: [] },
    outbox: startOutbox({ revision: 1, document: design, mark: "first" }),
    makers: [],
    history: startHistory(design),
  };
  let history: History<Design> = copy.history;
  let disk: LocalCopy = copy;
  let state: KeeperState | undefined;
  let apart: string | undefined;
  let tell: (told: Told) => void = () => {};
  const watchers = new Set<() => void>();
  const set = (next: History<Design>) => {
    history = next;
    for (const watcher of watchers) watcher();
  };
  const copies = {
    durable: true,
    async write(row: LocalCopy) {
      if (room.hangs) await new Promise(() => {});
      if (!room.left) throw new DOMException("the disk is full", "QuotaExceededError");
      disk = structuredClone(row);
    },
  } as LocalCopies;
  const keeper = keep(copy, {
    server: world.server,
    copies,
    means: {
      newId: () => `00000000-0000-4000-8000-${String(++ids).padStart(12, "0")}`,
      random: () => 0,
      same: sameJson,
      merge: joinDesigns,
      nameApart: () => "kept apart",
    },
    table: {
      history: () => history,
      lay: set,
      watch(listener) {
        watchers.add(listener);
        return () => watchers.delete(listener);
      },
      busy: () => false,
    },
    maker: () => here.who,
    diskPatience: 50,
    labelOf: ({ author }) => author,
    takenIn: () => {},
    setApart: (_from, parcel) => {
      apart = parcel.designId;
    },
    report: (told) => {
      state = told;
    },
    onChange(listener) {
      tell = listener;
      return () => {};
    },
  });
  return {
    keeper,
    disk: () => disk,
    state: () => state!,
    apart: () => apart,
    history: () => history,
    set,
    tell: (told: Told) => tell(told),
    edit: (path: string, value: unknown) => set(record(history, { op: "set", path, value }, `set ${path}`).history),
  };
}

const until = async (holds: () => boolean) => {
  for (let tries = 0; tries < 500 && !holds(); tries += 1) await new Promise((done) => setTimeout(done, 2));
  expect(holds()).toBe(true);
};
const ina: Maker = { who: "account", id: "a1", name: "Ina" };
const jo: Maker = { who: "account", id: "a2", name: "Jo" };
const height = { value: 905, unit: "mm" };
const length = { value: 1480, unit: "mm" };

describe("keeping a design", () => {
  it("writes a step down on the device and sends it", async () => {
    const world = fakeServer();
    const page = openPage(world);
    page.edit("/display/standHeight", height);
    await until(() => page.state().outbox.phase === "kept" && page.state().outbox.acknowledged.revision === 2);
    expect(world.latest("d").document.display.standHeight).toEqual(height);
    await page.keeper.written();
    expect(page.disk().outbox.phase).toBe("kept");
    expect(page.disk().history.past).toHaveLength(1);
  });

  it("has what was done without a connection on the device, sends it after a reload, and can still take it back", async () => {
    const world = fakeServer();
    world.state.reached = false;
    const page = openPage(world);
    page.edit("/display/standHeight", height);
    page.edit("/display/length", length);
    await until(() => page.state().outbox.phase === "waiting");
    await page.keeper.written();
    page.keeper.stop();
    world.state.reached = true;
    const again = openPage(world, page.disk());
    await until(() => again.state().outbox.phase === "kept");
    expect(world.latest("d").document.display.length).toEqual(length);
    again.set(undoMine(again.history()).history);
    await until(() => sameJson(world.latest("d").document.display.length, design.display.length));
    expect(world.latest("d").document.display.standHeight).toEqual(height);
  });

  it("says so where this device has no room for what waits, and sends it all the same", async () => {
    const world = fakeServer();
    world.state.reached = false;
    const room = { left: false };
    const page = openPage(world, undefined, room);
    page.edit("/display/standHeight", height);
    await until(() => page.state().outbox.phase === "waiting" && !page.state().writing);
    expect(page.state().onDisk).toBe(false);
    expect(keepingWord(page.state(), true, false, englishWords)).toMatchObject({ tone: "waits", help: "file" });
    world.state.reached = true;
    page.keeper.nudge();
    await until(() => page.state().outbox.phase === "kept");
    expect(world.latest("d").document.display.standHeight).toEqual(height);
    room.left = true;
    page.edit("/display/length", length);
    await until(() => page.state().onDisk);
    expect(page.disk().outbox.present.display.length).toEqual(length);
  });

  it("sends what is done where the disk neither writes it nor says no, and says that no copy is kept", async () => {
    const world = fakeServer();
    const page = openPage(world, undefined, { left: true, hangs: true });
    page.edit("/display/standHeight", height);
    await until(() => world.latest("d").revision === 2 && page.state().outbox.phase === "kept");
    expect(world.latest("d").document.display.standHeight).toEqual(height);
    expect(page.state()).toMatchObject({ onDisk: false, writing: false });
    expect(keepingWord(page.state(), true, false, englishWords)).toEqual({
      text: "kept; this device keeps no copy of it",
      tone: "waits",
    });
    await page.keeper.written();
    page.edit("/display/length", length);
    await until(() => world.latest("d").revision === 3);
  });

  it("sends nothing of another's when somebody else signs in, and says whose work waits", async () => {
    const world = fakeServer();
    world.state.reached = false;
    const here = { who: ina };
    const page = openPage(world, undefined, undefined, here);
    page.edit("/display/standHeight", height);
    await until(() => page.state().outbox.phase === "waiting");
    await page.keeper.written();
    expect(page.disk().makers).toEqual([ina]);
    here.who = jo;
    world.state.reached = true;
    const before = world.asked.length;
    page.keeper.nudge();
    await until(() => page.state().outbox.stop?.why === "another");
    // What is done on top is held with it.
    page.edit("/display/length", length);
    page.keeper.nudge();
    await new Promise((done) => setTimeout(done, 50));
    expect(world.asked).toHaveLength(before);
    expect(world.latest("d").revision).toBe(1);
    expect(keepingWord(page.state(), true, false, englishWords)).toMatchObject({
      text: "not kept: this is work of Ina and Jo and waits on this device",
      help: "another",
    });
    await page.keeper.written();
    expect(page.disk().outbox.present.display).toMatchObject({ standHeight: height, length });
    page.keeper.stop();
  });

  it("sends another's work once somebody says so, and goes on under their name", async () => {
    const world = fakeServer();
    world.state.reached = false;
    const here = { who: ina };
    const page = openPage(world, undefined, undefined, here);
    page.edit("/display/standHeight", height);
    await until(() => page.state().outbox.phase === "waiting");
    here.who = jo;
    world.state.reached = true;
    page.keeper.nudge();
    await until(() => page.state().outbox.stop?.why === "another");
    page.keeper.adopt();
    await until(() => page.state().outbox.phase === "kept");
    expect(world.latest("d").document.display.standHeight).toEqual(height);
    expect(page.state().makers).toEqual([]);
    page.keeper.stop();
  });

  it("lets another's work go out by itself when they are back, also on a page opened anew", async () => {
    const world = fakeServer();
    world.state.reached = false;
    const here = { who: ina };
    const page = openPage(world, undefined, undefined, here);
    page.edit("/display/standHeight", height);
    await until(() => page.state().outbox.phase === "waiting");
    here.who = jo;
    world.state.reached = true;
    page.keeper.nudge();
    await until(() => page.state().outbox.stop?.why === "another");
    await page.keeper.written();
    page.keeper.stop();
    here.who = ina;
    const again = openPage(world, page.disk(), undefined, here);
    await until(() => again.state().outbox.phase === "kept");
    expect(world.latest("d").document.display.standHeight).toEqual(height);
    again.keeper.stop();
  });

  it("joins what somebody else did meanwhile, and undo leaves that standing", async () => {
    const world = fakeServer();
    const page = openPage(world);
    await until(() => page.state() !== undefined);
    world.others("/display/length", length);
    page.edit("/display/standHeight", height);
    await until(() => page.state().outbox.phase === "kept" && page.state().outbox.acknowledged.revision === 3);
    expect(world.latest("d").document.display).toMatchObject({ length, standHeight: height });
    page.set(undoMine(page.history()).history);
    await until(() => page.state().outbox.phase === "kept" && page.state().outbox.acknowledged.revision === 4);
    expect(world.latest("d").document.display).toMatchObject({ length, standHeight: design.display.standHeight });
  });

  it("keeps the later work apart where both changed the same, and goes on in it", async () => {
    const world = fakeServer();
    const page = openPage(world);
    world.others("/display/standHeight", { value: 700, unit: "mm" });
    page.edit("/display/standHeight", height);
    await until(() => page.apart() !== undefined && page.state().outbox.phase === "kept");
    const variant = page.apart()!;
    expect(page.state().designId).toBe(variant);
    expect(world.latest(variant).document.display.standHeight).toEqual(height);
    expect(world.latest("d").document.display.standHeight).toEqual({ value: 700, unit: "mm" });
    page.edit("/display/length", length);
    await until(() => world.latest(variant).revision === 2);
    expect(world.latest(variant).document.display).toMatchObject({ length, standHeight: height });
  });

  /** A server that was put back to its first revision, and on which Ina has worked since. */
  const putBack = async () => {
    const world = fakeServer();
    const page = openPage(world);
    page.edit("/display/standHeight", height);
    await until(() => page.state().outbox.acknowledged.revision === 2 && page.state().outbox.phase === "kept");
    world.lines.get("d")!.length = 1;
    world.others("/display/length", length);
    return { world, page };
  };

  it("loses nothing to a server that was put back and has come to the same number again", async () => {
    const { world, page } = await putBack();
    page.edit("/display/width", { value: 640, unit: "mm" });
    await until(() => page.apart() !== undefined && page.state().outbox.phase === "kept");
    expect(world.latest("d").document.display).toMatchObject({ length, standHeight: design.display.standHeight });
    expect(world.latest(page.apart()!).document.display).toMatchObject({
      standHeight: height,
      width: { value: 640, unit: "mm" },
    });
    page.keeper.stop();
  });

  it("sets apart what only this device still has as soon as it sees that the server has lost it", async () => {
    const { world, page } = await putBack();
    page.tell({ kind: "lineBack" });
    await until(() => page.apart() !== undefined && page.state().outbox.phase === "kept");
    expect(world.latest(page.apart()!).document.display.standHeight).toEqual(height);
    page.keeper.stop();
  });

  it("takes over what a server that was put back has, where nothing was done here", async () => {
    const world = fakeServer();
    world.others("/display/standHeight", height);
    const page = openPage(world);
    await until(() => page.state().outbox.acknowledged.revision === 2);
    world.lines.get("d")!.length = 1;
    world.others("/display/length", length);
    page.tell({ kind: "lineBack" });
    await until(() => sameJson(page.history().present.display.length, length));
    expect(page.apart()).toBeUndefined();
    expect(page.history().present.display.standHeight).toEqual(design.display.standHeight);
    page.keeper.stop();
  });

  it("reads again what it was told of and could not read, while the line that told it stays up", async () => {
    const world = fakeServer();
    const page = openPage(world);
    await until(() => page.state().outbox.phase === "kept");
    world.others("/display/standHeight", height);
    world.state.reached = false;
    page.tell({ kind: "design", id: "d", jobId: "job", revision: 2 });
    await until(() => !page.state().reached);
    world.state.reached = true;
    await expect.poll(() => page.history().present.display.standHeight, { timeout: 5000 }).toEqual(height);
    expect(page.state().outbox.acknowledged.revision).toBe(2);
    page.keeper.stop();
  });

  it("reads again where it was told of a change while an older answer was under way", async () => {
    const world = fakeServer();
    const { open } = world.server;
    let answer: (() => void) | undefined;
    let asked = 0;
    const page = openPage({
      ...world,
      server: {
        ...world.server,
        async open(id) {
          asked += 1;
          const opened = await open(id);
          // The second answer is made, and then waits on the line.
          if (asked === 2)
            await new Promise<void>((go) => {
              answer = go;
            });
          return opened;
        },
      },
    });
    await until(() => page.state().outbox.phase === "kept" && asked === 1);
    await until(() => page.state().reached);
    world.others("/display/standHeight", height);
    page.tell({ kind: "design", id: "d", jobId: "job", revision: 2 });
    await until(() => answer !== undefined);
    world.others("/display/length", length);
    page.tell({ kind: "design", id: "d", jobId: "job", revision: 3 });
    answer!();
    await expect.poll(() => page.history().present.display.length, { timeout: 5000 }).toEqual(length);
    page.keeper.stop();
  });
});
