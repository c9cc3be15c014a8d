import pg from "pg";

const pause = 1000;

/** Hears what any program tells on this database's channel, over a connection of its own that is made again whenever it
 *  breaks; the answer stops it. What is told while it is broken is not heard. */
export async function listenOn(url: string, listener: (text: string) => void): Promise<() => Promise<void>> {
  let client: pg.Client | undefined;
  let again: NodeJS.Timeout | undefined;
  let stopped = false;

  const connect = async (): Promise<void> => {
    const made = new pg.Client({ connectionString: url, keepAlive: true });
    made.on("notification", ({ payload }) => {
      if (payload !== undefined) listener(payload);
    });
    const lost = (): void => {
      if (stopped || client !== made) return;
      client = undefined;
      again = setTimeout(() => connect().catch(lostBeforeMade), pause);
    };
    made.on("error", lost);
    made.on("end", lost);
    await made.connect();
    // A channel per schema: several shops may share one server.
    const { rows } = await made.query<{ channel: string }>("SELECT 'tidewright_' || current_schema() AS channel");
    await made.query(`LISTEN ${pg.escapeIdentifier(rows[0]?.channel ?? "tidewright")}`);
    if (stopped) await made.end();
    else client = made;
  };
  const lostBeforeMade = (): void => {
    if (!stopped) again = setTimeout(() => connect().catch(lostBeforeMade), pause);
  };

  await connect();
  return async () => {
    stopped = true;
    clearTimeout(again);
    await client?.end();
  };
}
