/** A document as the server has acknowledged it. */
export interface Acknowledged<Doc> {
  readonly revision: number;
  readonly document: Doc;
  /** Tells it from another revision of the same number, as after a backup was put back; not known in old copies. */
  readonly mark?: string | undefined;
}

/** What somebody else left on the server, and who. */
export interface Theirs<Doc> extends Acknowledged<Doc> {
  readonly author: string;
  /** The edit it came from; our own where its answer was lost on the way. */
  readonly editId: string | null;
}

/** A document on its way: one more revision, made from `base`. Sent again it is the same edit. */
export interface RevisionParcel<Doc> {
  readonly kind: "revision";
  readonly editId: string;
  readonly base: number;
  /** The mark of `base`. */
  readonly madeFrom?: string;
  readonly document: Doc;
  /** How many finished steps it brings. */
  readonly changes: number;
}

/** A document that cannot be joined with what somebody else left, on its way to a variant of its own. */
export interface ApartParcel<Doc> {
  readonly kind: "apart";
  readonly designId: string;
  readonly base: number;
  readonly name: string;
  readonly document: Doc;
  readonly changes: number;
  readonly theirs: Theirs<Doc>;
  /** Where both changed the same. */
  readonly paths: readonly string[];
}

export type Parcel<Doc> = RevisionParcel<Doc> | ApartParcel<Doc>;

/** Why nothing is sent until somebody does something about it; `another` where it is another's work than whoever's is here
 *  now. */
export type Stop =
  | { readonly why: "signIn" | "notAllowed" | "gone" | "another" }
  | { readonly why: "refused"; readonly title: string; readonly detail: string };

/** What of a design still has to reach the server. Phases: `kept` nothing; `sending` a parcel is under way; `waiting` the
 *  server could not be reached and is asked again later; `stopped` it refuses. */
export interface Outbox<Doc> {
  readonly phase: "kept" | "sending" | "waiting" | "stopped";
  readonly acknowledged: Acknowledged<Doc>;
  /** The document on the table. */
  readonly present: Doc;
  /** Finished steps that the server has not acknowledged. */
  readonly changes: number;
  /** Sent once or more, and neither acknowledged nor refused. */
  readonly parcel: Parcel<Doc> | undefined;
  /** Failed tries in a row. */
  readonly attempts: number;
  readonly stop: Stop | undefined;
  /** What the server said of itself where it was reached and could not do it. */
  readonly trouble: string | undefined;
}

/** What happens to an outbox. */
export type OutboxEvent<Doc> =
  | { readonly kind: "changed"; readonly present: Doc }
  | { readonly kind: "send" }
  | { readonly kind: "accepted"; readonly revision: number; readonly mark?: string | undefined }
  | { readonly kind: "unreachable"; readonly retryAfter?: number; readonly trouble?: string }
  | { readonly kind: "stopped"; readonly stop: Stop }
  /** `parted` where what is acknowledged here is not among what theirs was made from. */
  | { readonly kind: "theirs"; readonly theirs: Theirs<Doc>; readonly parted?: boolean };

/** What is to be done, in this order, once the outbox is safely written down. */
export type OutboxCommand<Doc> =
  | { readonly kind: "post"; readonly parcel: Parcel<Doc> }
  | { readonly kind: "retry"; readonly after: number }
  /** Lay this document on the table: ours and theirs joined. */
  | { readonly kind: "takeIn"; readonly document: Doc; readonly theirs: Theirs<Doc>; readonly before: Doc }
  /** The work on the table is a variant of its own from now on. */
  | { readonly kind: "setApart"; readonly parcel: ApartParcel<Doc> };

/** What an outbox needs of the world, handed in so that it can be tried without one. */
export interface OutboxMeans<Doc> {
  newId(): string;
  /** From 0 up to 1. */
  random(): number;
  same(one: Doc, other: Doc): boolean;
  merge(base: Doc, mine: Doc, theirs: Doc): { readonly merged: Doc } | { readonly paths: readonly string[] };
  nameApart(): string;
}

export interface Advanced<Doc> {
  readonly outbox: Outbox<Doc>;
  readonly commands: readonly OutboxCommand<Doc>[];
}

/** Returns the outbox of a design that has just been read from the server. */
export function startOutbox<Doc>(acknowledged: Acknowledged<Doc>): Outbox<Doc> {
  return {
    phase: "kept",
    acknowledged,
    present: acknowledged.document,
    changes: 0,
    parcel: undefined,
    attempts: 0,
    stop: undefined,
    trouble: undefined,
  };
}

/** First pause before the server is asked again, and the longest [ms]. */
const firstPause = 1000;
const longestPause = 60_000;

/** Returns the pause before try `attempts` + 1 [ms]: doubled each time, and by chance between half and whole, so that a
 *  shop full of devices does not come back all at once. */
export function pauseAfter(attempts: number, random: number): number {
  const whole = Math.min(longestPause, firstPause * 2 ** Math.max(0, attempts - 1));
  return whole * (0.5 + random / 2);
}

/** Returns the outbox after an event, and what is to be done about it. One parcel is under way at a time; what is done
 *  meanwhile goes with the next one, all in one document. Nothing that was done is ever dropped: what cannot be joined
 *  with others' work becomes a variant. */
export function advance<Doc>(outbox: Outbox<Doc>, event: OutboxEvent<Doc>, means: OutboxMeans<Doc>): Advanced<Doc> {
  switch (event.kind) {
    case "changed": {
      if (event.present === outbox.present) return { outbox, commands: [] };
      const changed = { ...outbox, present: event.present, changes: outbox.changes + 1 };
      if (outbox.phase === "kept") return dispatch(changed, means);
      // What was refused is gone for good; the next document may please, also as the variant that was to be made.
      if (outbox.stop?.why === "refused")
        return dispatch({ ...changed, parcel: apartAnew(changed), stop: undefined }, means);
      return { outbox: changed, commands: [] };
    }
    case "send":
      if (outbox.phase === "sending" || outbox.stop?.why === "gone") return { outbox, commands: [] };
      return dispatch(outbox, means);
    case "accepted":
      return accepted(outbox, event, means);
    case "unreachable": {
      const attempts = outbox.attempts + 1;
      const pause = Math.max(pauseAfter(attempts, means.random()), event.retryAfter ?? 0);
      return {
        outbox: { ...outbox, phase: "waiting", attempts, trouble: event.trouble },
        commands: [{ kind: "retry", after: pause }],
      };
    }
    case "stopped":
      return { outbox: { ...outbox, phase: "stopped", stop: event.stop }, commands: [] };
    case "theirs":
      return joined(outbox, event.theirs, event.parted === true, means);
  }
}

const apartAnew = <Doc>({ parcel, present: document, changes }: Outbox<Doc>) =>
  parcel?.kind === "apart" ? { ...parcel, document, changes } : undefined;

/** Sends what there is to send: the parcel that was under way, else the document on the table. */
function dispatch<Doc>(outbox: Outbox<Doc>, means: OutboxMeans<Doc>): Advanced<Doc> {
  const { acknowledged, present, changes } = outbox;
  if (outbox.parcel === undefined && means.same(acknowledged.document, present))
    return {
      outbox: { ...outbox, phase: "kept", changes: 0, attempts: 0, stop: undefined, trouble: undefined },
      commands: [],
    };
  const parcel: Parcel<Doc> = outbox.parcel ?? {
    kind: "revision",
    editId: means.newId(),
    base: acknowledged.revision,
    ...(acknowledged.mark === undefined ? {} : { madeFrom: acknowledged.mark }),
    document: present,
    changes: Math.max(1, changes),
  };
  return {
    outbox: { ...outbox, phase: "sending", parcel, changes: Math.max(1, changes), stop: undefined },
    commands: [{ kind: "post", parcel }],
  };
}

function accepted<Doc>(
  outbox: Outbox<Doc>,
  { revision, mark }: Pick<Acknowledged<Doc>, "revision" | "mark">,
  means: OutboxMeans<Doc>,
): Advanced<Doc> {
  const { parcel } = outbox;
  if (parcel === undefined) return { outbox, commands: [] };
  const settled: Outbox<Doc> = {
    ...outbox,
    acknowledged: { revision, document: parcel.document, ...(mark === undefined ? {} : { mark }) },
    changes: Math.max(0, outbox.changes - parcel.changes),
    parcel: undefined,
    attempts: 0,
  };
  const next = dispatch(settled, means);
  if (parcel.kind === "revision") return next;
  return { ...next, commands: [{ kind: "setApart", parcel }, ...next.commands] };
}

function joined<Doc>(
  outbox: Outbox<Doc>,
  theirs: Theirs<Doc>,
  parted: boolean,
  means: OutboxMeans<Doc>,
): Advanced<Doc> {
  const { acknowledged, present, parcel } = outbox;
  if (parcel?.kind === "apart") return { outbox, commands: [] };
  if (parcel?.kind === "revision" && theirs.editId === parcel.editId) return accepted(outbox, theirs, means);
  const older = theirs.revision < acknowledged.revision;
  // A late word of what is known already. In answer to a parcel it is none: the server has lost revisions since, as after a
  // backup was put back, and what was made from them goes where it harms nothing.
  if (older && outbox.phase !== "sending") return { outbox, commands: [] };
  // Joining reckons from what both began with. What is acknowledged here is no such thing once it is lost there, unless
  // what is there now is the very same.
  const lost = (older || parted) && !means.same(acknowledged.document, theirs.document);
  const found = lost ? { paths: [""] } : means.merge(acknowledged.document, present, theirs.document);
  if ("merged" in found) {
    const { merged } = found;
    const base: Outbox<Doc> = { ...outbox, acknowledged: theirs, present: merged, parcel: undefined, attempts: 0 };
    const next = dispatch(base, means);
    return { ...next, commands: [{ kind: "takeIn", document: merged, theirs, before: present }, ...next.commands] };
  }
  const apart: ApartParcel<Doc> = {
    kind: "apart",
    designId: means.newId(),
    base: Math.min(acknowledged.revision, theirs.revision),
    name: means.nameApart(),
    document: present,
    changes: outbox.changes,
    theirs,
    paths: found.paths,
  };
  return dispatch({ ...outbox, parcel: apart }, means);
}
