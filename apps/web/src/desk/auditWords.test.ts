import type { AuditEntry } from "@tidewright/protocol";
import { loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { auditWords } from "./auditWords.ts";

const [english, german] = await Promise.all([loadWords("en"), loadWords("de")]);

const said = (line: Partial<AuditEntry>, words = english) => {
  const entry = { id: "1", at: "2026-03-01T09:00:00.000Z", author: "Ada", subjectId: "x", detail: "", about: {} };
  const { did, kind, name, more } = auditWords({ ...entry, action: "update", subjectKind: "account", ...line }, words);
  return [did, kind, name, ...more].join(" | ");
};

describe("a line of the trail", () => {
  it("says on whom, and what became of an account", () => {
    expect(said({ action: "create", about: { name: "Jo", role: "staff" } })).toBe("made | Account | Jo | Staff");
    expect(said({ about: { name: "Jo", was: "Joan", role: "readOnly", password: "new" } })).toBe(
      "changed | Account | Jo | before: Joan | now Read only | new password",
    );
    expect(said({ about: { name: "Jo", access: "shut" } })).toBe("changed | Account | Jo | shut out");
    expect(said({ about: { name: "Jo", access: "open" } }, german)).toBe("geändert | Konto | Jo | wieder eingelassen");
  });

  it("says which pump, and whether it was there before", () => {
    const row = { action: "put", subjectKind: "catalogue", subjectId: "pump/house-1" };
    const about = { kind: "pump", name: "Ferrow C40" };
    expect(said({ ...row, about: { ...about, change: "new" } })).toBe("made | Pump | Ferrow C40 (house-1)");
    expect(said({ ...row, about: { ...about, change: "changed" } }, german)).toBe(
      "geändert | Pumpe | Ferrow C40 (house-1)",
    );
    // A line of an earlier program, and a kind that this page has no word for.
    expect(said(row)).toBe("kept | Pump | house-1");
    expect(said({ ...row, subjectId: "note/7" })).toBe("kept | Catalogue | 7");
  });

  it("says which link, design, file and job, and whose", () => {
    const of = { job: "Reef", jobId: "j" };
    const link = { action: "create", subjectKind: "link", about: { kind: "view", design: "First", ...of } };
    expect(said(link)).toBe("made | Link to a design |  | design First | job Reef");
    expect(said({ ...link, action: "revoke", about: { kind: "intake" } }, german)).toBe(
      "geschlossen | Link zu einer Anfrage | ",
    );
    expect(said({ action: "create", subjectKind: "design", about: { name: "First", ...of } })).toBe(
      "made | Design | First | job Reef",
    );
    const variant = { name: "Quieter", was: "First", version: "2", ...of };
    expect(said({ action: "duplicate", subjectKind: "design", about: variant })).toBe(
      "made as a variant | Design | Quieter | from First | job Reef",
    );
    expect(said({ action: "nameVersion", subjectKind: "design", about: { name: "First", version: "2", ...of } })).toBe(
      "named a version | Design | First | version 2 | job Reef",
    );
    expect(said({ action: "remove", subjectKind: "job", about: { name: "Reef" } })).toBe("removed | Job | Reef");
    expect(said({ action: "remove", subjectKind: "job" })).toBe("removed | Job | ");
    expect(said({ action: "melt", subjectKind: "comet" })).toBe("melt | comet | ");
  });
});
