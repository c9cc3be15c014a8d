import { afterEach, describe, expect, it } from "vitest";
import { by, freshStore, removePlaces } from "../testing/freshStore.ts";

afterEach(removePlaces);

describe("files", () => {
  it("come back byte for byte, also from a view into larger memory", async () => {
    const store = await freshStore();
    await store.jobs.create({ id: "j", name: "J" }, by());
    const whole = Uint8Array.from({ length: 1000 }, (_, i) => i % 256);
    const part = whole.subarray(3, 700);
    const kept = await store.files.put(
      { id: "f", jobId: "j", kind: "photo", name: "sump <b>.png", contentType: "image/png", bytes: part },
      by(),
    );
    expect(kept).toMatchObject({ ok: true, value: { size: 697 } });
    const file = await store.files.get("f");
    expect(file && [...file.bytes]).toEqual([...part]);
    // SHA-256 by Python 3.11's hashlib over bytes(i % 256 for i in range(3, 700)).
    expect(file?.sha256).toBe("e0110d6555fda13983b516d43e4e63243979ed83797bff43c8db3d0dd4d8136c");
    expect(await store.files.list("j")).toHaveLength(1);
    expect(await store.files.remove("f", by())).toMatchObject({ ok: true });
    expect(await store.files.get("f")).toBeUndefined();
  });

  it("that are empty, too large or of no type are refused with every problem", async () => {
    const store = await freshStore({ limits: { fileBytes: 10 } });
    const put = (bytes: number, contentType: string) =>
      store.files.put({ kind: "chart", name: "c", contentType, bytes: new Uint8Array(bytes) }, by());
    expect(await put(11, "not a type")).toMatchObject({
      ok: false,
      problems: [{ path: "/contentType" }, { path: "/bytes", fix: "give a file of 1 to 10 bytes" }],
    });
    expect(await put(0, "image/png")).toMatchObject({ ok: false, problems: [{ path: "/bytes" }] });
    expect(await put(10, "image/png")).toMatchObject({ ok: true });
  });
});

describe("settings and catalogue rows", () => {
  it("start untold and change by the version that was seen", async () => {
    const store = await freshStore();
    const { settings, version } = await store.settings.read();
    expect(version).toBe(0);
    const told = { ...settings, name: "Pell & Wicken Seawater Rooms", tariff: { value: 0.31, unit: "EUR/kWh" } };
    expect(await store.settings.write(0, told, by())).toMatchObject({ ok: true, value: { version: 1 } });
    expect(await store.settings.write(0, settings, by())).toMatchObject({
      reason: "conflict",
      current: { version: 1 },
    });
    expect(await store.settings.read()).toEqual({ settings: told, version: 1 });
    expect(
      await store.settings.write(1, { ...told, currency: "euro", priceMultipliers: { "a/b": 0 } }, by()),
    ).toMatchObject({ problems: [{ path: "/currency" }, { path: "/priceMultipliers/a~1b" }] });
  });

  it("tell a first writer of another first writer", async () => {
    const store = await freshStore();
    expect(await store.catalogue.put("pump", "ferrow-c40", 0, { head: 4 }, by())).toMatchObject({ ok: true });
    expect(await store.catalogue.put("pump", "ferrow-c40", 0, { head: 5 }, by())).toMatchObject({
      ok: false,
      reason: "conflict",
      current: { data: { head: 4 }, version: 1 },
    });
    expect(await store.catalogue.put("pump", "ferrow-c40", 1, { head: 5 }, by())).toMatchObject({
      ok: true,
      value: { version: 2, data: { head: 5 } },
    });
    expect(await store.catalogue.list("pump")).toHaveLength(1);
    expect(await store.catalogue.remove("pump", "ferrow-c40", 1, by())).toMatchObject({ reason: "conflict" });
    expect(await store.catalogue.remove("pump", "ferrow-c40", 2, by())).toMatchObject({ ok: true });
    expect(await store.catalogue.find("pump", "ferrow-c40")).toBeUndefined();
  });
});
