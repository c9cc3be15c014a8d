import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { draftKey, forgetDraft, keepDraft, keepSent, keptDraft } from "./keptDrafts.ts";

const [one, other] = ["A".repeat(43), `${"A".repeat(42)}B`];
const kept = new Map<string, string>();

beforeEach(() => {
  kept.clear();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
    removeItem: (key: string) => kept.delete(key),
  });
});
afterEach(() => vi.unstubAllGlobals());

describe("what a customer types", () => {
  it("is kept for the link alone that it was typed for, and no key says the link", () => {
    const draft = { ...keptDraft(one, "en-GB"), name: "Ottoline" };
    keepDraft(one, draft);
    expect(keptDraft(one, "en-GB")).toEqual(draft);
    expect(keptDraft(other, "en-GB")).toMatchObject({ name: "" });
    expect(keptDraft(other, "en-GB").id).not.toBe(draft.id);
    expect([...kept.keys()].join()).not.toContain("AAAA");
    expect(draftKey(one)).not.toBe(draftKey(other));
    // The test values of the function's authors.
    expect(["", "a", "foobar"].map(draftKey)).toEqual([
      "tidewright.intake.cbf29ce484222325",
      "tidewright.intake.af63dc4c8601ec8c",
      "tidewright.intake.85944171f73967e8",
    ]);
  });

  it("is gone once it is sent, but for the id, and all of it once the link is closed", () => {
    const draft = { ...keptDraft(one, "en-GB"), name: "Ottoline" };
    keepDraft(one, draft);
    keepSent(one, draft);
    expect(keptDraft(one, "en-GB")).toMatchObject({ id: draft.id, name: "" });
    expect([...kept.values()].join()).not.toContain("Ottoline");
    // Another page of the same browser, which has not sent it.
    forgetDraft(one, { ...draft, id: "another" });
    expect(keptDraft(one, "en-GB").id).toBe(draft.id);
    forgetDraft(one, draft);
    expect(kept.size).toBe(0);
  });

  it("by an earlier program, for whichever link, is taken away unread", () => {
    kept.set("tidewright.intake", JSON.stringify({ name: "Somebody before" }));
    expect(keptDraft(one, "en-GB").name).toBe("");
    expect(kept.size).toBe(0);
  });

  it("may be lost where nothing can be kept, and the form is there all the same", () => {
    const closed = () => {
      throw new Error("closed");
    };
    vi.stubGlobal("localStorage", { getItem: closed, setItem: closed, removeItem: closed });
    const draft = keptDraft(one, "en-US");
    expect(draft).toMatchObject({ name: "", units: "us" });
    keepDraft(one, draft);
    forgetDraft(one, draft);
  });
});
