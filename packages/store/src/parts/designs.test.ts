import { afterEach, describe, expect, it } from "vitest";
import { randomFrom } from "../../trial/randomFrom.ts";
import { openStore } from "../openStore.ts";
import type { Store, StoreChange } from "../store.ts";
import { by, freshPlace, freshStore, removePlaces } from "../testing/freshStore.ts";

afterEach(removePlaces);

const document = (name: string) => ({ tidewright: 1, name, display: { length: { value: 1500, unit: "mm" } } });

async function withDesign(): Promise<Store> {
  const store = await freshStore();
  await store.jobs.create({ id: "job", name: "Waiting-room reef" }, by());
  await store.designs.create({ id: "reef", jobId: "job", name: "First idea", document: document("one") }, by());
  return store;
}

describe("the history of a design", () => {
  it("keeps every revision as it was, each with its parent, author and time", async () => {
    const store = await withDesign();
    for (let revision = 1; revision <= 5; revision++) {
      const outcome = await store.designs.append("reef", revision, document(`r${revision + 1}`), by("Jo", revision));
      expect(outcome).toMatchObject({ ok: true, value: { number: revision + 1, parent: revision, author: "Jo" } });
    }
    const history = await store.designs.history("reef");
    expect(history.map(({ number, parent }) => [number, parent])).toEqual([
      [6, 5],
      [5, 4],
      [4, 3],
      [3, 2],
      [2, 1],
      [1, null],
    ]);
    expect(history[0]?.at).toBe(by("Jo", 5).at);
    expect((await store.designs.revision("reef", 3))?.document).toEqual(document("r3"));
    expect((await store.designs.latest("reef"))?.document).toEqual(document("r6"));
    expect((await store.designs.history("reef", { limit: 2, before: 4 })).map(({ number }) => number)).toEqual([3, 2]);
    expect((await store.jobs.find("job"))?.updatedAt).toBe(by("Jo", 5).at);
  });

  it("remembers an undo as a revision made from an earlier one", async () => {
    const store = await withDesign();
    await store.designs.append("reef", 1, document("two"), by());
    await store.designs.append("reef", 2, document("one"), by(), { parent: 1 });
    expect((await store.designs.history("reef"))[0]).toMatchObject({ number: 3, parent: 1 });
    expect(await store.designs.append("reef", 3, document("x"), by(), { parent: 9 })).toMatchObject({
      ok: false,
      problems: [{ path: "/parent" }],
    });
  });

  it("tells the later of two writers what the first one left, and keeps the later work as a variant", async () => {
    const store = await withDesign();
    await store.designs.append("reef", 1, document("Mara's"), by("Mara", 1));
    const late = await store.designs.append("reef", 1, document("Jo's"), by("Jo", 2));
    expect(late).toMatchObject({
      ok: false,
      reason: "conflict",
      current: { number: 2, author: "Mara", document: document("Mara's") },
    });
    const variant = await store.designs.duplicate(
      "reef",
      { name: "Jo's work", revision: 1, document: document("Jo's") },
      by("Jo", 3),
    );
    expect(variant).toMatchObject({ ok: true, value: { jobId: "job", variantOf: { designId: "reef", revision: 1 } } });
    const id = variant.ok ? variant.value.id : "";
    expect((await store.designs.latest(id))?.document).toEqual(document("Jo's"));
    expect((await store.designs.latest("reef"))?.document).toEqual(document("Mara's"));
    expect((await store.designs.ofJob("job")).map(({ name }) => name)).toEqual(["First idea", "Jo's work"]);
  });

  it("takes a revision of another history for no base, though it bears the same number, as after a backup was put back", async () => {
    const lost = "00000000-0000-4000-8000-000000000001";
    const kept = "00000000-0000-4000-8000-000000000002";
    const store = await withDesign();
    await store.designs.append("reef", 1, document("after the backup"), by("Mara", 1), { editId: kept });
    const late = await store.designs.append("reef", 2, document("made from what was lost"), by("Jo", 2), {
      madeFrom: lost,
    });
    expect(late).toMatchObject({ ok: false, reason: "conflict", current: { number: 2, author: "Mara", editId: kept } });
    const fine = await store.designs.append("reef", 2, document("three"), by("Jo", 3), { madeFrom: kept });
    expect(fine).toMatchObject({ ok: true, value: { number: 3, editId: null } });
    // A revision that came from no edit is known by its instant.
    const next = await store.designs.append("reef", 3, document("four"), by("Jo", 4), { madeFrom: by("Jo", 3).at });
    expect(next).toMatchObject({ ok: true, value: { number: 4 } });
    const other = await store.designs.append("reef", 4, document("five"), by("Jo", 5), { madeFrom: by("Jo", 3).at });
    expect(other).toMatchObject({ ok: false, reason: "conflict" });
  });

  it("lets exactly one of twenty writers at once be first", async () => {
    const store = await withDesign();
    const outcomes = await Promise.all(
      Array.from({ length: 20 }, (_, i) => store.designs.append("reef", 1, document(`w${i}`), by(`w${i}`))),
    );
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
    const winner = outcomes.findIndex(({ ok }) => ok);
    for (const outcome of outcomes) {
      if (!outcome.ok) expect(outcome).toMatchObject({ reason: "conflict", current: { author: `w${winner}` } });
    }
    expect(await store.designs.history("reef")).toHaveLength(2);
  });

  it("keeps an edit once, however often it is sent", async () => {
    const store = await withDesign();
    const send = () => store.designs.append("reef", 1, document("two"), by(), { editId: "e-1" });
    const answers = [...(await Promise.all([send(), send(), send()])), await send()];
    expect(answers.every((answer) => answer.ok && answer.value.number === 2)).toBe(true);
    await store.designs.append("reef", 2, document("three"), by());
    expect(await send()).toMatchObject({ ok: true, value: { number: 2 } });
    expect(await store.designs.history("reef")).toHaveLength(3);
  });

  it("holds every edit of twenty editors exactly once, though their answers are often lost on the way", async () => {
    const store = await withDesign();
    for (let n = 1; n < 5; n++) {
      await store.designs.create({ id: `d${n}`, jobId: "job", name: `D${n}`, document: [] }, by());
    }
    await store.designs.create({ id: "d0", jobId: "job", name: "D0", document: [] }, by());
    const random = randomFrom(20260301);
    const edit = async (editor: number): Promise<string[]> => {
      const designId = `d${editor % 5}`;
      const sent: string[] = [];
      let known = { number: 1, lines: [] as string[] };
      for (let n = 0; n < 8; n++) {
        const editId = `${editor}-${n}`;
        sent.push(editId);
        for (let isSent = false; !isSent; ) {
          const answer = await store.designs.append(
            designId,
            known.number,
            [...known.lines, editId],
            by(`editor ${editor}`),
            { editId },
          );
          await new Promise((resolve) => setTimeout(resolve, random() * 3));
          // Cut: the editor never hears of it and sends the same edit again.
          if (random() < 0.3) continue;
          if (answer.ok) isSent = true;
          const current = (await store.designs.latest(designId))!;
          known = { number: current.number, lines: current.document as string[] };
        }
      }
      return sent;
    };
    const sent = await Promise.all(Array.from({ length: 20 }, (_, editor) => edit(editor)));
    for (let n = 0; n < 5; n++) {
      const lines = [...((await store.designs.latest(`d${n}`))!.document as string[])].sort();
      const expected = sent.filter((_, editor) => editor % 5 === n).flat();
      expect(lines).toEqual(expected.sort());
      const numbers = (await store.designs.history(`d${n}`)).map(({ number }) => number);
      expect(numbers).toEqual(Array.from({ length: expected.length + 1 }, (_, i) => expected.length + 1 - i));
    }
  });

  it("names a version, and names it anew", async () => {
    const store = await withDesign();
    await store.designs.nameVersion("reef", 1, "For the customer", by());
    await store.designs.nameVersion("reef", 1, "Signed", by());
    expect((await store.designs.history("reef"))[0]).toMatchObject({ number: 1, name: "Signed" });
    expect(await store.designs.nameVersion("reef", 7, "x", by())).toMatchObject({ ok: false, reason: "missing" });
  });

  it("says every problem of a revision at once and keeps nothing of it", async () => {
    const store = await freshStore({ limits: { documentBytes: 50 } });
    await store.jobs.create({ id: "job", name: "Job" }, by());
    await store.designs.create({ id: "d", jobId: "job", name: "D", document: {} }, by());
    const outcome = await store.designs.append("d", 1, { text: "x".repeat(60) }, { author: "", at: "yesterday" });
    const paths = !outcome.ok && outcome.reason === "invalid" ? outcome.problems.map(({ path }) => path) : [];
    expect(paths.sort()).toEqual(["/by/at", "/by/author", "/document"]);
    expect(await store.designs.history("d")).toHaveLength(1);
    expect(await store.designs.append("nowhere", 1, {}, by())).toMatchObject({ ok: false, reason: "missing" });
  });

  it("finds the designs whose latest document has a text, whatever the text is made of", async () => {
    const store = await withDesign();
    const naming = (ref: string) => ({ ...document("other"), loops: [{ pumps: [{ ref }] }] });
    const other = { id: "other", jobId: "job", name: "Other", document: naming('a_1%\\"') };
    await store.designs.create(other, by("Jo", 2));
    const found = async (ref: string) =>
      (await store.designs.holding(JSON.stringify(ref), 10)).map(({ head, jobName }) => [head.id, jobName]);
    expect(await found('a_1%\\"')).toEqual([["other", "Waiting-room reef"]]);
    expect(await found("ab1")).toEqual([]);
    // What an older revision had is history.
    await store.designs.append("other", 1, naming("b"), by("Jo", 3));
    expect(await found('a_1%\\"')).toEqual([]);
    await store.designs.append("reef", 1, naming("b"), by("Jo", 4));
    expect((await found("b")).map(([id]) => id)).toEqual(["reef", "other"]);
    expect(await store.designs.holding('"b"', 1)).toMatchObject([{ head: { id: "reef" }, document: naming("b") }]);
  });

  it("tells watchers of what is kept, and of nothing else", async () => {
    const store = await withDesign();
    const seen: StoreChange[] = [];
    const stop = store.watch((change) => seen.push(change));
    await store.designs.append("reef", 1, document("two"), by());
    await store.designs.append("reef", 1, document("late"), by());
    const told = () => seen.filter((change) => change.kind === "design" && change.revision > 1);
    await heard(() => told().length > 0);
    stop();
    await store.designs.append("reef", 2, document("three"), by());
    expect(told()).toEqual([{ kind: "design", id: "reef", jobId: "job", revision: 2 }]);
  });

  it.runIf(process.env["DATABASE_URL"])("is told to another server on the same database within a second", async () => {
    const place = await freshPlace();
    const [one, two] = [await openStore(place), await openStore(place)];
    const seen: StoreChange[] = [];
    two.watch((change) => seen.push(change));
    await one.jobs.create({ id: "j", name: "J" }, by());
    await heard(() => seen.length > 0);
    expect(seen).toEqual([{ kind: "job", id: "j", version: 1 }]);
    await one.close();
    await two.close();
  });
});

/** Waits up to the second that a second screen is given. */
async function heard(isHeard: () => boolean): Promise<void> {
  for (let wait = 0; !isHeard() && wait < 100; wait++) await new Promise((resolve) => setTimeout(resolve, 10));
}
