import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { openStore } from "../openStore.ts";
import type { Store } from "../store.ts";
import { by, freshFolder, freshStore, removePlaces } from "../testing/freshStore.ts";
import { erasedDocument, personalWords } from "./erasedDocument.ts";

afterEach(removePlaces);

const reef = {
  tidewright: 1,
  name: "Quillfeather's waiting room",
  notes: "ring Quillfeather first",
  sump: { chambers: [{ name: "drain of Ottoline" }, { name: "return" }] },
  loops: [{ name: "return", from: { place: "sump.drain of Ottoline" }, pumps: [{ ref: "ottoline-40" }] }],
};

async function fill(store: Store): Promise<void> {
  await store.customers.create(
    { id: "c", name: "Ottoline Quillfeather", contact: "ottoline@example.org\n555 0199", notes: "two dogs" },
    by(),
  );
  await store.jobs.create({ id: "j", name: "Quillfeather", customerId: "c", notes: "key under the mat" }, by());
  await store.designs.create({ id: "d", jobId: "j", name: "Ottoline's idea", document: reef }, by());
  await store.designs.append("d", 1, { ...reef, name: "Second" }, by("Ottoline Quillfeather"));
  await store.designs.nameVersion("d", 2, "Quillfeather agreed", by());
  const file = { jobId: "j", contentType: "image/png", bytes: Buffer.from("a picture of Quillfeather's hall") };
  await store.files.put({ ...file, id: "p", kind: "photo", name: "hall.png" }, by());
  await store.files.put({ ...file, id: "k", kind: "chart", name: "pump.png", bytes: Buffer.from("curve") }, by());
  await store.jobs.create({ id: "other", name: "Somebody else", notes: "untouched" }, by());
}

describe("erasing a customer", () => {
  it("takes the person out of everything that is kept, and says what was taken", async () => {
    const store = await freshStore();
    await fill(store);
    const outcome = await store.eraseCustomer("c", by("Mara", 5));
    expect(outcome).toMatchObject({
      ok: true,
      value: {
        jobsUnnamed: 1,
        revisionsChanged: 2,
        filesErased: 1,
        designsKept: 1,
        fields: ["name", "contact", "notes"],
      },
    });
    expect(await store.customers.find("c")).toBeUndefined();
    expect(await store.files.get("p")).toBeUndefined();
    expect(await store.files.get("k")).toMatchObject({ name: "chart" });
    expect(await store.jobs.find("j")).toMatchObject({ customerId: null, name: "Erased customer", notes: "" });
    expect(await store.jobs.find("other")).toMatchObject({ name: "Somebody else", notes: "untouched" });
    const everything = JSON.stringify([
      await store.jobs.search(),
      await store.designs.ofJob("j"),
      await store.designs.history("d"),
      await store.designs.revision("d", 1),
      await store.designs.revision("d", 2),
      await store.audit.list(),
    ]);
    expect(everything).not.toMatch(/Quillfeather|Ottoline |Ottoline@|0199/);
    expect((await store.designs.latest("d"))?.document).toMatchObject({
      sump: { chambers: [{ name: "drain of (erased)" }, { name: "return" }] },
      loops: [{ from: { place: "sump.drain of (erased)" }, pumps: [{ ref: "ottoline-40" }] }],
    });
    expect(await store.eraseCustomer("c", by())).toMatchObject({ ok: false, reason: "missing" });
  });

  it("leaves no byte of the person in the data folder", async () => {
    const folder = join(freshFolder(), "data");
    const store = await openStore(folder);
    await fill(store);
    await store.eraseCustomer("c", by());
    const bytes = ["tidewright.db", "tidewright.db-wal"]
      .map((name) => readFileSync(join(folder, name), "latin1"))
      .join();
    await store.close();
    expect(bytes).not.toMatch(/quillfeather|two dogs|0199|under the mat/i);
    expect(bytes).toContain("untouched");
  });
});

describe("the words of a person", () => {
  it("are whole words only, longest first", () => {
    expect(personalWords("Ann Lee-Ott", "ann@example.org; 555 0199")).toEqual([
      "ann@example.org",
      "Ann Lee-Ott",
      "555 0199",
      "Lee-Ott",
      "Ann",
    ]);
    expect(erasedDocument({ a: { text: "Ann's annual planning" } }, ["Ann"])).toEqual({
      a: { text: "(erased)'s annual planning" },
    });
  });
  it("may hold any character", () => {
    expect(erasedDocument({ a: { text: "call (a+b)*c" } }, personalWords("(a+b)*c", ""))).toEqual({
      a: { text: "call (erased)" },
    });
  });
});
