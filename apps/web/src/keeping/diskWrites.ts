/** Writes of one copy to this device's disk. */
export interface DiskWrites<Row> {
  /** Writes a row after all before it; done once it is on the disk, or once it is clear that the disk does not take it. */
  write(row: Row): Promise<void>;
  /** Whether something is under way to the disk. */
  writing(): boolean;
  /** Whether the newest row that was to be written is there. */
  onDisk(): boolean;
  /** Done once nothing is under way. */
  written(): Promise<void>;
}

/** How long a disk may take before it counts as one that keeps nothing [ms]: a phone's slow one takes some hundreds. */
const patience = 3000;

/** Returns the queue of writes of a copy. A disk that is full, or that neither does its work nor says no, must not keep the
 *  work from the server: after `limit` it counts as away, nothing waits for it any more, and when it answers after all it
 *  is given what is newest.
 *  put writes one row   changed hears of every change of what the queue says   limit [ms] */
export function diskWrites<Row>(
  put: (row: Row) => Promise<void>,
  changed: () => void,
  limit = patience,
): DiskWrites<Row> {
  let queue: Promise<void> = Promise.resolve();
  let under = 0;
  let onDisk = true;
  let hangs = false;
  let newest: Row | undefined;

  const put1 = (row: Row): Promise<boolean> =>
    new Promise((settle) => {
      const timer = setTimeout(() => {
        hangs = true;
        settle(false);
      }, limit);
      const answered = (done: boolean) => {
        clearTimeout(timer);
        if (!hangs) {
          settle(done);
          return;
        }
        // Back again: what it missed meanwhile is in the newest row.
        hangs = false;
        if (newest !== undefined) void write(newest);
      };
      put(row).then(
        () => answered(true),
        () => answered(false),
      );
    });

  const write = (row: Row): Promise<void> => {
    newest = row;
    if (hangs) {
      onDisk = false;
      return queue;
    }
    under += 1;
    queue = queue
      .then(() => (hangs ? false : put1(row)))
      .then((done) => {
        onDisk = done;
        under -= 1;
        changed();
      });
    return queue;
  };

  return { write, writing: () => under > 0, onDisk: () => onDisk, written: () => queue };
}
