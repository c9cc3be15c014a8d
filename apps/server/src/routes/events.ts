import { routes } from "@tidewright/protocol";
import type { StoreChange } from "@tidewright/store";
import type { App } from "../app.ts";
import type { Asker } from "../doors/asker.ts";
import { instantOf } from "../doors/doors.ts";
import { Refused } from "../doors/refusal.ts";
import { senderKey } from "../doors/whoAsks.ts";
import { mount } from "../http/mount.ts";

/** How event streams are kept: time between signs of life [ms], streams at once, in all and of one sender, and how many
 *  bytes may wait for a screen that does not read. */
export interface StreamLimits {
  readonly heartbeat: number;
  readonly most: number;
  readonly mostOfSender: number;
  readonly mostWaiting: number;
}

/** Proxies close what is silent for a minute. */
const usual: StreamLimits = { heartbeat: 20_000, most: 500, mostOfSender: 100, mostWaiting: 256 * 1024 };

/** What asks a screen to read anew what it shows. */
const refetch = "event: refetch\ndata: {}\n\n";

/** Tells of every change as it is kept.
 *  Events are not kept for those who were away: a stream begins with `refetch` where the browser says that it lost one, and
 *  a screen that reads too slowly is cut off, which brings it back the same way. It is told in the midst of a stream where
 *  the server itself could not hear of others' changes.
 *  app; limits   -> what closes every stream, for the end of the server
 *  Source: WHATWG HTML, 9.2 server-sent events. */
export function mountEvents(app: App, limits: StreamLimits = usual): () => void {
  const streams = new Set<Stream>();
  app.store.watch((change) => {
    const text =
      change.kind === "missed"
        ? refetch
        : `event: change\nid: ${Date.now().toString(36)}\ndata: ${JSON.stringify(change satisfies StoreChange)}\n\n`;
    for (const stream of streams) stream.send(text);
  });
  mount(app, routes.events, ({ bearings, request, asker }) => {
    const headers = { "Content-Type": "text/event-stream", "X-Accel-Buffering": "no" };
    // Nobody would read or end the stream of a HEAD.
    if (request.method === "HEAD") return new Response(null, { headers });
    const sender = senderKey(app.doors, bearings);
    const ofSender = [...streams].filter((each) => each.sender === sender).length;
    if (streams.size >= limits.most || ofSender >= limits.mostOfSender) throw tooManyStreams();
    const check = async () => {
      if (!(await isStillIn(app, asker))) stream.close();
    };
    const stream = openStream(sender, limits, check, () => streams.delete(stream));
    streams.add(stream);
    stream.send(request.headers.has("Last-Event-ID") ? refetch : ": open\n\n");
    request.signal.addEventListener("abort", stream.close, { once: true });
    return new Response(stream.body, { headers });
  });
  return () => {
    for (const stream of streams) stream.close();
  };
}

/** Whether a listener's session is open still. Asking is no use of it: a screen that was left open does not keep its
 *  session from ending. */
async function isStillIn(app: App, asker: Asker): Promise<boolean> {
  if (asker.who !== "account") return asker.who === "thisMachine";
  return (await app.store.sessions.find(asker.token, instantOf(app.doors))) !== undefined;
}

interface Stream {
  readonly sender: string;
  readonly body: ReadableStream<Uint8Array>;
  readonly send: (text: string) => void;
  readonly close: () => void;
}

/** A stream that stays open until somebody closes it. Whoever lost the right to listen is found at each sign of life. */
function openStream(
  sender: string,
  { heartbeat, mostWaiting }: StreamLimits,
  check: () => Promise<void>,
  closed: () => void,
): Stream {
  const encoder = new TextEncoder();
  let controller: ReadableStreamDefaultController<Uint8Array> | undefined;
  const beat = setInterval(() => {
    send(": still here\n\n");
    check().catch(close);
  }, heartbeat);
  beat.unref();
  const close = (): void => {
    if (controller === undefined) return;
    const ended = controller;
    controller = undefined;
    clearInterval(beat);
    closed();
    try {
      ended.close();
    } catch {
      // The browser went first.
    }
  };
  const send = (text: string): void => {
    if (controller === undefined) return;
    if ((controller.desiredSize ?? 0) < -mostWaiting) return close();
    try {
      controller.enqueue(encoder.encode(text));
    } catch {
      // A connection that broke just now must not fail the change that it was to be told of.
      close();
    }
  };
  const body = new ReadableStream<Uint8Array>(
    {
      start: (given) => {
        controller = given;
      },
      cancel: () => {
        close();
      },
    },
    { highWaterMark: 0, size: (chunk) => chunk?.byteLength ?? 0 },
  );
  return { sender, body, send, close };
}

const tooManyStreams = (): Refused =>
  new Refused(
    {
      type: "urn:tidewright:problem:too-many",
      title: "Too many screens listen already",
      status: 429,
      detail: "close some of them, or try again in 30 s",
    },
    { "Retry-After": "30" },
  );
