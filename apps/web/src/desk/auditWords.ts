import type { AuditEntry } from "@tidewright/protocol";
import type { MessageKey, Words } from "@tidewright/words";

/** A line of the trail in a reader's words: what was done, on what kind of thing, its name, and what more is known of it. */
export interface AuditWords {
  readonly did: string;
  readonly kind: string;
  readonly name: string | undefined;
  readonly more: readonly string[];
}

/** Returns a line of the trail in words. What a newer server does, and this page has no word for, is shown by its code.
 *  line   words   -> AuditWords; without a name in lines of earlier programs and where a customer was erased
 *  Example: an account "Jo" that was given another password  ->  "changed", "Account", "Jo", ["new password"] */
export function auditWords(line: AuditEntry, words: Words): AuditWords {
  const { say } = words;
  const told = (key: string, code: string): string => (words.knows(key as MessageKey) ? say(key as MessageKey) : code);
  const { about } = line;
  // Of a row it is known whether it was there before.
  const action = { new: "create", changed: "update" }[about["change"] ?? ""] ?? line.action;
  const [rowKind, ...rowId] = line.subjectKind === "catalogue" ? line.subjectId.split("/") : [];
  const kindCode =
    line.subjectKind === "link" && about["kind"] !== undefined
      ? `link.${about["kind"]}`
      : (rowKind ?? line.subjectKind);
  const known = words.knows(`desk.subject.${kindCode}` as MessageKey);
  const row = rowId.join("/");
  return {
    did: told(`desk.did.${action}`, action),
    kind: told(`desk.subject.${known ? kindCode : line.subjectKind}`, line.subjectKind),
    name: rowKind === undefined ? about["name"] : about["name"] === undefined ? row : `${about["name"]} (${row})`,
    more: [...(line.subjectKind === "account" ? ofAccount(line, words) : []), ...ofJob(line, words)],
  };
}

function ofAccount({ action, about }: AuditEntry, { say, knows }: Words): string[] {
  const roleKey = `desk.role.${about["role"]}`;
  const role = knows(roleKey) ? say(roleKey) : about["role"];
  return [
    ...(about["was"] === undefined ? [] : [say("desk.about.was", { name: about["was"] })]),
    ...(role === undefined ? [] : [action === "create" ? role : say("desk.about.role", { role })]),
    ...(about["password"] === undefined ? [] : [say("desk.about.password")]),
    ...(about["access"] === undefined
      ? []
      : [say(about["access"] === "shut" ? "desk.about.shut" : "desk.about.letIn")]),
  ];
}

function ofJob({ action, about, subjectKind }: AuditEntry, { say }: Words): string[] {
  const renamed = about["was"] !== undefined && (subjectKind === "job" || action === "duplicate");
  return [
    ...(renamed && subjectKind === "job" ? [say("desk.about.was", { name: about["was"]! })] : []),
    ...(renamed && subjectKind === "design" ? [say("desk.about.variantOf", { name: about["was"]! })] : []),
    ...(action === "nameVersion" && about["version"] !== undefined
      ? [say("desk.about.version", { number: about["version"] })]
      : []),
    ...(about["design"] === undefined ? [] : [say("desk.about.design", { name: about["design"] })]),
    ...(about["job"] === undefined ? [] : [say("desk.about.job", { name: about["job"] })]),
  ];
}
