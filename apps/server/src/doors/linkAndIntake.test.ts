import { demoCatalogue } from "@tidewright/catalogue";
import { checkDesign } from "@tidewright/design";
import type { Link } from "@tidewright/protocol";
import { afterEach, describe, expect, it } from "vitest";
import { compute } from "../compute/compute.ts";
import { firstDesignOn } from "../compute/firstDesignOn.ts";
import { freshDoors, removeFresh } from "../testing/freshDoors.ts";
import { createLink, sharedDesignOf, withoutName } from "./customerLinks.ts";
import type { Doors } from "./doors.ts";
import { tooBusy } from "./refusal.ts";
import { takeIntake } from "./takeIntake.ts";
import { whoAsks } from "./whoAsks.ts";

afterEach(removeFresh);

const here = "192.0.2.7";
const day = 86_400_000;
const at = "2026-03-01T09:00:00.000Z";
const by = { author: "Mara", at };
const showing = async (doors: Doors, token: string): Promise<Link | undefined> => {
  const asker = await whoAsks(doors, {
    cookie: undefined,
    authorization: `Link ${token}`,
    forwardedFor: undefined,
    remoteAddress: here,
  });
  return asker.who === "link" ? asker.link : undefined;
};

describe("a customer's link", () => {
  it("holds 256 random bits and opens until it expires or is revoked", async () => {
    const { doors, store, clock } = await freshDoors();
    const one = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    const other = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    expect(one.token).toMatch(/^[\w-]{43}$/);
    expect(one.token).not.toBe(other.token);
    expect(await showing(doors, one.token)).toMatchObject({ id: one.link.id });
    await store.links.revoke(one.link.id, by);
    expect(await showing(doors, one.token)).toBeUndefined();
    clock.now += 7 * day - 1;
    expect(await showing(doors, other.token)).toMatchObject({ id: other.link.id });
    clock.now += 1;
    expect(await showing(doors, other.token)).toBeUndefined();
    expect(JSON.stringify(await store.audit.list())).not.toContain(one.token);
  });

  it("is not to be had by trying, and bad tries do not shut good links out for others", async () => {
    const { doors } = await freshDoors();
    const { token } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    let refused = 0;
    for (let turn = 0; turn < 40; turn++) {
      await showing(doors, `${turn}`.padStart(43, "A")).catch((error) => {
        refused++;
        expect(error.details.status).toBe(429);
      });
    }
    expect(refused).toBe(10);
    const elsewhere = { cookie: undefined, forwardedFor: undefined, remoteAddress: "198.51.100.1" };
    for (let turn = 0; turn < 100; turn++) {
      expect(await whoAsks(doors, { ...elsewhere, authorization: `Link ${token}` })).toMatchObject({ who: "link" });
    }
  });

  it("shows one design and the shop, and nothing of the customer", async () => {
    const { doors, store } = await freshDoors();
    await store.customers.create(
      { id: "c", name: "Aldous Penn", contact: "aldous@penn.example", notes: "pays late" },
      by,
    );
    await store.jobs.create(
      { id: "j", name: "Aldous Penn, reef by the window", customerId: "c", notes: "haggles" },
      by,
    );
    const document = {
      name: "Penn's reef",
      notes: "he will not notice the cheap valve",
      scenarios: [{ name: "cut", notes: "do not show him" }],
    };
    await store.designs.create({ id: "d", jobId: "j", name: "Penn, first", document }, by);
    await store.designs.create({ id: "e", jobId: "j", name: "Other", document: { name: "Other" } }, by);
    await store.designs.append("d", 1, { ...document, name: "Second" }, by);
    const latest = await createLink(doors, { kind: "view", designId: "d", days: 7 }, "Mara");
    const first = await createLink(doors, { kind: "view", designId: "d", revision: 1, days: 7 }, "Mara");
    const shown = await sharedDesignOf(doors, latest.link);
    expect(shown).toMatchObject({
      jobName: "reef by the window",
      designName: "first",
      revision: 2,
      document: { name: "Second", scenarios: [{ name: "cut" }] },
    });
    expect(await sharedDesignOf(doors, first.link)).toMatchObject({ revision: 1, document: { name: "reef" } });
    for (const link of [latest.link, first.link]) {
      expect(JSON.stringify(await sharedDesignOf(doors, link))).not.toMatch(/Penn|Aldous|late|haggles|cheap|him|Other/);
    }
    await store.jobs.remove("j", 1, by);
    await expect(sharedDesignOf(doors, latest.link)).rejects.toMatchObject({ details: { status: 404 } });
    const opened = (await store.audit.list()).filter((line) => line.action === "open");
    expect(opened).toHaveLength(2);
  });

  it("leaves a name out only where it stands as words", () => {
    expect(withoutName("Pendant light", "Aldous Pend")).toBe("Pendant light");
    expect(withoutName("PENN'S reef", "Aldous Penn")).toBe("reef");
    expect(withoutName("Aldous Penn", "Aldous Penn")).toBe("Design");
    expect(withoutName("Reef", null)).toBe("Reef");
    expect(withoutName("a (b+ c", "(b+ ***")).toBe("a c");
  });
});

const drafts = ["00000000-0000-4000-8000-000000000001", "00000000-0000-4000-8000-000000000002"] as const;

/** Doors of a server that stops before a link is closed. */
const stopping = (doors: Doors): Doors => ({
  ...doors,
  store: { ...doors.store, links: { ...doors.store.links, revoke: () => Promise.reject(new Error("stopped")) } },
});

describe("an intake", () => {
  // Where it is computed is no matter of the door.
  const makeDesign = firstDesignOn({ run: async (request) => compute(request), close: async () => {} }, []);
  const answer = {
    name: "Aldous Penn",
    contact: "aldous@penn.example",
    notes: "quiet, please",
    answers: { tank: { volume: { value: 400, unit: "L" } } },
  };

  it("becomes a customer, a job to review, a design that can be opened and the answers, once", async () => {
    const { doors, store } = await freshDoors();
    const { link, token } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    await takeIntake(doors, link, answer, makeDesign, here);
    expect(await showing(doors, token)).toBeUndefined();
    const { items: jobs } = await store.jobs.search();
    expect(jobs).toMatchObject([
      { name: "Aldous Penn", customerName: "Aldous Penn", stage: "intake", notes: "quiet, please" },
    ]);
    const [head] = await store.designs.ofJob(jobs[0]!.id);
    const latest = await store.designs.latest(head!.id);
    expect(checkDesign(latest?.document, demoCatalogue)).toMatchObject({ ok: true });
    const [file] = await store.files.list(jobs[0]!.id);
    const stored = await store.files.get(file!.id);
    expect(JSON.parse(Buffer.from(stored!.bytes).toString())).toMatchObject({ answers: answer.answers });
    // All of it goes with the customer.
    await store.eraseCustomer(jobs[0]!.customerId!, by);
    expect(await store.files.list(jobs[0]!.id)).toEqual([]);
    expect(JSON.stringify([await store.jobs.search(), await store.audit.list()])).not.toMatch(/Aldous|quiet/);
  });

  it("makes nothing twice when it is sent twice at once, or again after it was cut short", async () => {
    const { doors, store } = await freshDoors();
    const { link } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    const both = await Promise.allSettled([1, 2].map(() => takeIntake(doors, link, answer, makeDesign, here)));
    expect(both.map((each) => each.status).sort()).toEqual(["fulfilled", "rejected"]);
    // As if the machine had stopped before the link was closed: the first try's customer and job are there.
    const { link: second } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    await expect(takeIntake(stopping(doors), second, answer, makeDesign, here)).rejects.toThrow("stopped");
    await takeIntake(doors, second, answer, makeDesign, here);
    for (const { id } of [link, second]) {
      expect(await store.designs.ofJob(id)).toHaveLength(1);
      expect(await store.files.list(id)).toHaveLength(1);
    }
    expect((await store.customers.search()).total).toBe(2);
    expect((await store.jobs.search()).total).toBe(2);
  });

  it("sent again because its answer was lost is answered as the first time, and nothing is made twice", async () => {
    const { doors, store } = await freshDoors();
    const { link } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    // At once, as where the first one is still computed, and late, by a request that came in while the link was open.
    await Promise.all([1, 2].map(() => takeIntake(doors, link, answer, makeDesign, here, drafts[0])));
    await takeIntake(doors, link, answer, makeDesign, here, drafts[0]);
    expect((await store.customers.search()).total).toBe(1);
    expect((await store.jobs.search()).total).toBe(1);
    expect(await store.designs.ofJob(link.id)).toHaveLength(1);
    expect(await store.files.list(link.id)).toHaveLength(1);
  });

  it("of two senders on one link is the first one's, and the other one's is not mixed with it", async () => {
    const { doors, store } = await freshDoors();
    const other = { ...answer, name: "Berta Quill", contact: "berta@quill.example" };
    const { link } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    const both = [
      takeIntake(doors, link, answer, makeDesign, here, drafts[0]),
      takeIntake(doors, link, other, makeDesign, here, drafts[1]),
    ];
    const [first, second] = await Promise.allSettled(both);
    expect(first.status).toBe("fulfilled");
    expect(second).toMatchObject({ reason: { details: { status: 404 } } });
    // The same where the first one was cut short, which may come again.
    const { link: cut } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    await expect(takeIntake(stopping(doors), cut, answer, makeDesign, here, drafts[0])).rejects.toThrow("stopped");
    await expect(takeIntake(doors, cut, other, makeDesign, here, drafts[1])).rejects.toMatchObject({
      details: { status: 404 },
    });
    await takeIntake(doors, cut, answer, makeDesign, here, drafts[0]);
    expect((await store.customers.search()).items.map(({ name }) => name)).toEqual(["Aldous Penn", "Aldous Penn"]);
    // Where the first one was refused, the link is open for the other one.
    const { link: open } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    let turn = 0;
    const busyOnce = firstDesignOn(
      {
        run: (request) => (turn++ === 0 ? Promise.reject(tooBusy()) : Promise.resolve(compute(request))),
        close: async () => {},
      },
      [],
    );
    const tried = await Promise.allSettled([
      takeIntake(doors, open, answer, busyOnce, here, drafts[0]),
      takeIntake(doors, open, other, busyOnce, here, drafts[1]),
    ]);
    expect(tried.map((each) => each.status)).toEqual(["rejected", "fulfilled"]);
    expect(await store.customers.find(open.id)).toMatchObject({ name: "Berta Quill" });
  });

  it("names what it makes in the language in which the form was filled in", async () => {
    const { doors, store } = await freshDoors();
    const { link } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    await takeIntake(doors, link, { ...answer, language: "de" }, makeDesign, here);
    expect((await store.designs.ofJob(link.id)).map(({ name }) => name)).toEqual(["Erste Planung"]);
    expect((await store.files.list(link.id)).map(({ name }) => name)).toEqual(["Antworten der Anfrage.json"]);
  });

  it("with answers that cannot be worked with names every problem and keeps nothing, and the link stays open", async () => {
    const { doors, store } = await freshDoors();
    const { link, token } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    const bad = { ...answer, answers: { tank: { volume: { value: -3, unit: "kg" } }, power: 7 } };
    const refused = await takeIntake(doors, link, bad, makeDesign, here).catch((error) => error);
    expect(refused.details.status).toBe(422);
    const paths = refused.details.problems.map((each: { path: string }) => each.path);
    expect(paths).toEqual(expect.arrayContaining(["/answers/tank/volume/unit", "/answers/power"]));
    expect((await store.customers.search()).total).toBe(0);
    expect(await showing(doors, token)).toBeDefined();
  });

  it("keeps the job without a design where none can be made, and says why in one line", async () => {
    const { doors, store } = await freshDoors();
    const { link } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    const fault = new Error("the catalogue is not to be read").stack!;
    const failing = firstDesignOn({ run: async () => ({ ok: false, fault }), close: async () => {} }, []);
    await takeIntake(doors, link, answer, failing, here);
    const [job] = (await store.jobs.search()).items;
    expect(job?.notes).toBe(
      "quiet, please\n\nNo first design could be made of the answers: the catalogue is not to be read",
    );
    expect(await store.designs.ofJob(link.id)).toEqual([]);
  });

  it("keeps nothing where too much is computed already, and the link stays open for another try", async () => {
    const { doors, store } = await freshDoors();
    const { link, token } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    const busy = firstDesignOn({ run: () => Promise.reject(tooBusy()), close: async () => {} }, []);
    await expect(takeIntake(doors, link, answer, busy, here)).rejects.toMatchObject({ details: { status: 503 } });
    expect([(await store.customers.search()).total, (await store.jobs.search()).total]).toEqual([0, 0]);
    expect(await showing(doors, token)).toBeDefined();
    await takeIntake(doors, link, answer, makeDesign, here);
    expect(await store.designs.ofJob(link.id)).toHaveLength(1);
  });

  it("is held back after ten from one address", async () => {
    const { doors } = await freshDoors();
    const { link } = await createLink(doors, { kind: "intake", days: 7 }, "Mara");
    const answers: number[] = [];
    for (let turn = 0; turn < 12; turn++) {
      await takeIntake(doors, link, { ...answer, answers: 7 }, makeDesign, here).catch((error) =>
        answers.push(error.details.status),
      );
    }
    expect(answers).toEqual([...Array(10).fill(422), 429, 429]);
  });
});
