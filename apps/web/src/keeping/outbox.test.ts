import { sameJson } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import {
  advance,
  type Outbox,
  type OutboxEvent,
  type OutboxMeans,
  pauseAfter,
  startOutbox,
  type Theirs,
} from "./outbox.ts";

type Doc = Readonly<Record<string, number>>;

/** Field by field, which is what joining means for so small a document. */
function merge(base: Doc, mine: Doc, theirs: Doc) {
  const names = [...new Set([...Object.keys(base), ...Object.keys(mine), ...Object.keys(theirs)])];
  const paths = names.filter(
    (name) => mine[name] !== base[name] && theirs[name] !== base[name] && mine[name] !== theirs[name],
  );
  if (paths.length > 0) return { paths };
  return {
    merged: Object.fromEntries(names.map((name) => [name, mine[name] !== base[name] ? mine[name]! : theirs[name]!])),
  };
}

function means(): OutboxMeans<Doc> {
  let ids = 0;
  return { newId: () => `id${++ids}`, random: () => 1, same: sameJson, merge, nameApart: () => "mine, kept apart" };
}

/** Plays events one after the other; returns the outbox and everything it asked for. */
function play(events: readonly OutboxEvent<Doc>[], from = startOutbox<Doc>({ revision: 5, document: { a: 1, b: 1 } })) {
  const world = means();
  let outbox: Outbox<Doc> = from;
  const commands = events.flatMap((event) => {
    const advanced = advance(outbox, event, world);
    outbox = advanced.outbox;
    return advanced.commands;
  });
  return { outbox, commands };
}

const changed = (present: Doc): OutboxEvent<Doc> => ({ kind: "changed", present });
const theirs = (revision: number, document: Doc, editId: string | null = null): OutboxEvent<Doc> => ({
  kind: "theirs",
  theirs: { revision, document, author: "Ina", editId },
});

describe("the outbox of a design", () => {
  it("sends a step from the revision it was made from, and is kept once that is acknowledged", () => {
    const sent = play([changed({ a: 2, b: 1 })]);
    expect(sent.outbox.phase).toBe("sending");
    expect(sent.commands).toEqual([
      { kind: "post", parcel: { kind: "revision", editId: "id1", base: 5, document: { a: 2, b: 1 }, changes: 1 } },
    ]);
    const kept = play([changed({ a: 2, b: 1 }), { kind: "accepted", revision: 6 }]).outbox;
    expect(kept).toMatchObject({ phase: "kept", changes: 0, acknowledged: { revision: 6, document: { a: 2, b: 1 } } });
  });

  it("sends what was done meanwhile as one more document, one at a time", () => {
    const { outbox, commands } = play([
      changed({ a: 2, b: 1 }),
      changed({ a: 3, b: 1 }),
      changed({ a: 4, b: 1 }),
      { kind: "accepted", revision: 6 },
    ]);
    const posts = commands.filter(({ kind }) => kind === "post");
    expect(posts).toHaveLength(2);
    expect(posts[1]).toMatchObject({ parcel: { editId: "id2", base: 6, document: { a: 4, b: 1 }, changes: 2 } });
    expect(outbox.phase).toBe("sending");
  });

  it("asks again with the same edit after silence, so that what arrived after all is not made twice", () => {
    const { outbox, commands } = play([
      changed({ a: 2, b: 1 }),
      { kind: "unreachable" },
      changed({ a: 3, b: 1 }),
      { kind: "send" },
    ]);
    const posts = commands.filter(({ kind }) => kind === "post");
    expect(posts[1]).toEqual(posts[0]);
    expect(outbox.changes).toBe(2);
    const after = play([{ kind: "accepted", revision: 6 }], outbox);
    expect(after.commands[0]).toMatchObject({ kind: "post", parcel: { base: 6, document: { a: 3, b: 1 } } });
  });

  it("waits twice as long after each silence, up to a minute, and never less than half of that", () => {
    // Exponential backoff with jitter: common practice. The values are analytic.
    expect([1, 2, 3, 7, 20].map((attempts) => pauseAfter(attempts, 1))).toEqual([1000, 2000, 4000, 60_000, 60_000]);
    expect(pauseAfter(1, 0)).toBe(500);
    const { commands } = play([
      changed({ a: 2, b: 1 }),
      { kind: "unreachable" },
      { kind: "send" },
      { kind: "unreachable" },
    ]);
    expect(commands.filter(({ kind }) => kind === "retry")).toEqual([
      { kind: "retry", after: 1000 },
      { kind: "retry", after: 2000 },
    ]);
  });

  it("joins what somebody else did first and sends the whole from their revision", () => {
    const { outbox, commands } = play([changed({ a: 2, b: 1 }), theirs(6, { a: 1, b: 9 })]);
    expect(outbox.present).toEqual({ a: 2, b: 9 });
    expect(commands.slice(1)).toMatchObject([
      { kind: "takeIn", document: { a: 2, b: 9 }, before: { a: 2, b: 1 } },
      { kind: "post", parcel: { kind: "revision", base: 6, document: { a: 2, b: 9 } } },
    ]);
  });

  it("takes in what somebody else did while nothing of its own waits, and sends nothing", () => {
    const { outbox, commands } = play([theirs(6, { a: 1, b: 9 })]);
    expect(outbox).toMatchObject({ phase: "kept", acknowledged: { revision: 6 }, present: { a: 1, b: 9 } });
    expect(commands.map(({ kind }) => kind)).toEqual(["takeIn"]);
  });

  it("keeps work apart as a variant of the revision it was made from where both changed the same, and goes on in it", () => {
    const first = play([changed({ a: 2, b: 1 }), theirs(6, { a: 7, b: 1 })]);
    expect(first.commands[1]).toMatchObject({
      kind: "post",
      parcel: { kind: "apart", base: 5, document: { a: 2, b: 1 }, paths: ["a"], theirs: { revision: 6 } },
    });
    // The network fails, somebody works on, and the same variant is asked for again.
    const second = play([{ kind: "unreachable" }, changed({ a: 2, b: 3 }), { kind: "send" }], first.outbox);
    expect(second.commands.at(-1)).toEqual(first.commands[1]);
    const third = play([{ kind: "accepted", revision: 1 }], second.outbox);
    expect(third.commands).toMatchObject([
      { kind: "setApart" },
      { kind: "post", parcel: { kind: "revision", base: 1, document: { a: 2, b: 3 } } },
    ]);
    expect(third.outbox.present).toEqual({ a: 2, b: 3 });
  });

  it("keeps work apart where the server has gone back behind what it had acknowledged, as after a backup was put back", () => {
    const sent = play([changed({ a: 2, b: 1 }), theirs(3, { a: 0, b: 1 })]);
    expect(sent.commands[1]).toMatchObject({
      kind: "post",
      parcel: { kind: "apart", base: 3, document: { a: 2, b: 1 }, theirs: { revision: 3 } },
    });
    // Told of without having sent anything it is late news, and nothing comes of it.
    expect(play([theirs(3, { a: 0, b: 1 })]).commands).toEqual([]);
  });

  it("says what a revision was made from, so that another of the same number is no base", () => {
    const from = startOutbox<Doc>({ revision: 5, document: { a: 1, b: 1 }, mark: "e5" });
    const sent = play([changed({ a: 2, b: 1 }), { kind: "accepted", revision: 6, mark: "e6" }], from);
    expect(sent.commands[0]).toMatchObject({ parcel: { base: 5, madeFrom: "e5" } });
    expect(sent.outbox.acknowledged).toEqual({ revision: 6, document: { a: 2, b: 1 }, mark: "e6" });
  });

  it("keeps work apart that was made from what the server has lost, at the same number or at a later one", () => {
    for (const revision of [5, 9]) {
      // Joined as if both began with ours, the 1 of b would be theirs to change, and ours of before the loss be gone.
      const left = { revision, document: { a: 1, b: 0 }, author: "Ina", editId: "x", mark: "x" };
      const { commands } = play([changed({ a: 2, b: 1 }), { kind: "theirs", theirs: left, parted: true }]);
      expect(commands.slice(1)).toMatchObject([
        { kind: "post", parcel: { kind: "apart", base: 5, document: { a: 2, b: 1 } } },
      ]);
    }
  });

  it("joins as ever where what was lost is there again word for word", () => {
    const left = { revision: 5, document: { a: 1, b: 1 }, author: "Ina", editId: "x", mark: "x" };
    const { commands } = play([changed({ a: 2, b: 1 }), { kind: "theirs", theirs: left, parted: true }]);
    expect(commands.at(-1)).toMatchObject({
      kind: "post",
      parcel: { kind: "revision", base: 5, madeFrom: "x", document: { a: 2, b: 1 } },
    });
  });

  it("offers the next document where a variant was refused", () => {
    const { outbox, commands } = play([
      changed({ a: 2, b: 1 }),
      theirs(6, { a: 7, b: 1 }),
      { kind: "stopped", stop: { why: "refused", title: "too large", detail: "" } },
      changed({ a: 3, b: 1 }),
    ]);
    expect(commands.at(-1)).toMatchObject({ kind: "post", parcel: { kind: "apart", document: { a: 3, b: 1 } } });
    expect(play([{ kind: "accepted", revision: 1 }], outbox).outbox).toMatchObject({ phase: "kept", changes: 0 });
  });

  it("knows its own edit when it comes back as somebody's", () => {
    const { outbox, commands } = play([
      changed({ a: 2, b: 1 }),
      { kind: "unreachable" },
      theirs(6, { a: 2, b: 1 }, "id1"),
    ]);
    expect(outbox).toMatchObject({ phase: "kept", acknowledged: { revision: 6 } });
    expect(commands.some(({ kind }) => kind === "takeIn")).toBe(false);
  });

  it("lets work go on while nobody is signed in, and sends it after", () => {
    const out = play([changed({ a: 2, b: 1 }), { kind: "stopped", stop: { why: "signIn" } }, changed({ a: 3, b: 1 })]);
    expect(out.outbox).toMatchObject({ phase: "stopped", changes: 2, present: { a: 3, b: 1 } });
    const back = play(
      [{ kind: "send" }, { kind: "accepted", revision: 6 }, { kind: "accepted", revision: 7 }],
      out.outbox,
    );
    expect(back.outbox).toMatchObject({ phase: "kept", acknowledged: { revision: 7, document: { a: 3, b: 1 } } });
  });

  it("sends nothing for a step that was taken back before it was sent", () => {
    const waiting = play([changed({ a: 2, b: 1 }), { kind: "accepted", revision: 6 }]).outbox;
    const offline: Outbox<Doc> = { ...waiting, phase: "waiting" };
    const { outbox, commands } = play([changed({ a: 3, b: 1 }), changed({ b: 1, a: 2 }), { kind: "send" }], offline);
    expect(outbox).toMatchObject({ phase: "kept", changes: 0 });
    expect(commands).toEqual([]);
  });

  it("loses no edit of three people whose network fails at random, whatever the order", () => {
    // A server of one line of revisions, as the store is; each of three editors changes fields of their own.
    for (let seed = 1; seed <= 200; seed += 1) {
      let state = seed;
      const chance = () => {
        // Park and Miller's minimal standard generator, Comm. ACM 31 (1988) 1192, from memory.
        state = (state * 48_271) % 2_147_483_647;
        return state / 2_147_483_647;
      };
      let latest: Theirs<Doc> = { revision: 1, document: { a: 0, b: 0, c: 0 }, author: "", editId: null };
      const edits = new Map<string, number>();
      const editors = ["a", "b", "c"].map((name) => ({
        name,
        world: { ...means(), newId: () => `${name}${chance()}` },
        outbox: startOutbox<Doc>(latest),
      }));
      const serve = (editor: (typeof editors)[number], arrives: () => boolean): void => {
        const { parcel } = editor.outbox;
        if (editor.outbox.phase !== "sending" || parcel?.kind !== "revision") return;
        let answer: OutboxEvent<Doc> = { kind: "unreachable" };
        if (arrives()) {
          const known = edits.get(parcel.editId);
          if (known !== undefined) answer = { kind: "accepted", revision: known };
          else if (parcel.base !== latest.revision) answer = { kind: "theirs", theirs: latest };
          else {
            latest = {
              revision: latest.revision + 1,
              document: parcel.document,
              author: editor.name,
              editId: parcel.editId,
            };
            edits.set(parcel.editId, latest.revision);
            answer = { kind: "accepted", revision: latest.revision };
          }
          if (!arrives()) answer = { kind: "unreachable" };
        }
        editor.outbox = advance(editor.outbox, answer, editor.world).outbox;
      };
      for (let turn = 0; turn < 60; turn += 1) {
        const editor = editors[Math.floor(chance() * 3)]!;
        const { name, world, outbox } = editor;
        if (chance() < 0.5) {
          const present = { ...outbox.present, [name]: (outbox.present[name] ?? 0) + 1 };
          editor.outbox = advance(outbox, { kind: "changed", present }, world).outbox;
        } else if (outbox.phase === "waiting") editor.outbox = advance(outbox, { kind: "send" }, world).outbox;
        serve(editor, () => chance() < 0.6);
      }
      const wanted = Object.fromEntries(editors.map(({ name, outbox }) => [name, outbox.present[name]]));
      for (let round = 0; round < 20; round += 1)
        for (const editor of editors) {
          editor.outbox = advance(editor.outbox, { kind: "send" }, editor.world).outbox;
          serve(editor, () => true);
        }
      expect(latest.document, `seed ${seed}`).toEqual(wanted);
      for (const { outbox } of editors) expect(outbox.phase, `seed ${seed}`).toBe("kept");
    }
  });
});
