import pg from "pg";

/** How a lost connection is noticed and made again [ms]: pause between tries, time between signs of life, and how long one
 *  may take. A connection that a router forgot breaks without a word, so somebody has to ask. */
export interface ListeningTimes {
  readonly pause: number;
  readonly signOfLife: number;
  readonly patience: number;
}

const usual: ListeningTimes = { pause: 1000, signOfLife: 30_000, patience: 10_000 };

/** Hears what any program tells on this database's channel, over a connection of its own that is made again whenever it
 *  breaks; the answer stops it. What is told while it is broken is not heard: `missed` is called as soon as it listens again,
 *  so that nothing that is told from then on falls between the two. */
export async function listenOn(
  url: string,
  listener: (text: string) => void,
  missed: () => void,
  { pause, signOfLife, patience }: ListeningTimes = usual,
): Promise<() => Promise<void>> {
  let client: pg.Client | undefined;
  let again: NodeJS.Timeout | undefined;
  let stopped = false;

  const connect = async (): Promise<void> => {
    const made = new pg.Client({
      connectionString: url,
      keepAlive: true,
      connectionTimeoutMillis: patience,
      query_timeout: patience,
    });
    // What a connection that was given up still holds is of no use: the reading anew has seen what it tells of.
    let givenUp = false;
    let beat: NodeJS.Timeout | undefined;
    const lost = (): void => {
      if (givenUp) return;
      givenUp = true;
      clearTimeout(beat);
      made.end().catch(() => undefined);
      if (client !== made) return;
      client = undefined;
      tryAgain(0);
    };
    made.on("notification", ({ payload }) => {
      if (payload !== undefined && !givenUp) listener(payload);
    });
    made.on("error", lost);
    made.on("end", lost);
    try {
      await made.connect();
      // A channel per schema: several shops may share one server.
      const { rows } = await made.query<{ channel: string }>("SELECT 'tidewright_' || current_schema() AS channel");
      await made.query(`LISTEN ${pg.escapeIdentifier(rows[0]?.channel ?? "tidewright")}`);
    } catch (error) {
      lost();
      throw error;
    }
    if (stopped) return made.end();
    if (givenUp) throw new Error("the connection broke as soon as it was made");
    client = made;
    const live = (): void => {
      if (givenUp) return;
      beat = setTimeout(() => made.query("SELECT 1").then(live, lost), signOfLife);
      beat.unref();
    };
    live();
  };
  const tryAgain = (after: number): void => {
    if (stopped) return;
    again = setTimeout(() => {
      connect().then(
        () => {
          if (!stopped) missed();
        },
        () => tryAgain(pause),
      );
    }, after);
  };

  await connect();
  return async () => {
    stopped = true;
    clearTimeout(again);
    await client?.end();
  };
}
