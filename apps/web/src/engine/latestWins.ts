/** A line of one: while a request runs, only the newest of those that came meanwhile is kept. */
export interface LatestWins<Request> {
  /** Sends now, or as soon as the running request is done; whatever waited before is dropped. */
  ask(request: Request): void;
  /** To be called when the running request has been answered. */
  done(): void;
}

/** Returns a line that never queues stale work: at most one request runs and at most one, the newest, waits.
 *  send called with each request that is really sent   -> LatestWins */
export function latestWins<Request>(send: (request: Request) => void): LatestWins<Request> {
  let running = false;
  let waiting: { readonly request: Request } | undefined;

  return {
    ask(request) {
      if (running) {
        waiting = { request };
        return;
      }
      running = true;
      send(request);
    },
    done() {
      running = false;
      if (waiting === undefined) return;
      const { request } = waiting;
      waiting = undefined;
      running = true;
      send(request);
    },
  };
}
