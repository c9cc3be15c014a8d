import { fromDraft } from "./fromDraft.ts";

/** One step from a version to the next: takes a document of the older version, returns one of the newer, changes
 *  nothing in place, never throws, and leaves alone what it does not understand. The version field is set by `migrate`. */
export type Migration = (document: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/** All steps in order: place n leads from version n to n + 1, so their number is the newest version.
 *  Findings: none. Throws: never.
 *  Valid: documents from version 0, the draft form, on.
 *  Source: own construction.
 *  Example: migrations.length  ->  1 */
export const migrations: readonly Migration[] = [fromDraft];
