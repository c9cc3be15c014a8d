import { availableParallelism } from "node:os";
import { extname } from "node:path";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { tooBusy } from "../doors/refusal.ts";
import type { ComputeAnswer, ComputeRequest } from "./computeRequest.ts";

/** Threads that compute beside the one that answers. */
export interface ThreadPool {
  readonly run: (request: ComputeRequest) => Promise<ComputeAnswer>;
  readonly close: () => Promise<void>;
}

interface Task {
  readonly request: ComputeRequest;
  readonly settle: (answer: ComputeAnswer) => void;
}

/** The same file in sources and in the built program, where its ending differs. */
const ending = extname(fileURLToPath(import.meta.url));
const workerFile = new URL(`./worker${ending}`, import.meta.url);
const fromSources = ending === ".ts";
/** A thread does not take over the loader by which tests and scripts read TypeScript, so it fetches its own. */
const sourceStart = `import("tsx/esm/api").then(({ register }) => { register(); return import(${JSON.stringify(workerFile.href)}); });`;

/** Returns threads that start when there is work for them and go when the server does.
 *  most threads; mostWaiting requests in the queue; patience until a computation counts as stuck [ms]   -> ThreadPool
 *  Throws (run): `Refused` 503 where too many wait. */
export function threadPool(
  most = Math.max(1, Math.min(4, availableParallelism() - 1)),
  mostWaiting = 64,
  patience = 120_000,
): ThreadPool {
  const idle: Worker[] = [];
  const all = new Set<Worker>();
  const waiting: Task[] = [];

  const next = (): void => {
    while (waiting.length > 0) {
      const worker = idle.pop() ?? (all.size < most ? start() : undefined);
      if (worker === undefined) return;
      give(worker, waiting.shift()!);
    }
  };
  const start = (): Worker => {
    const worker = fromSources
      ? new Worker(sourceStart, { eval: true, execArgv: ["--conditions=source"] })
      : new Worker(workerFile);
    worker.unref();
    all.add(worker);
    // A thread may also fail while nobody waits for it, which must end neither the server nor the next request.
    worker.on("error", () => {});
    worker.once("exit", () => {
      all.delete(worker);
      const place = idle.indexOf(worker);
      if (place >= 0) idle.splice(place, 1);
    });
    return worker;
  };
  const give = (worker: Worker, { request, settle }: Task): void => {
    const end = (answer: ComputeAnswer, again: boolean): void => {
      clearTimeout(limit);
      for (const [event, listener] of Object.entries(listeners)) worker.off(event, listener);
      if (again) idle.push(worker);
      else {
        all.delete(worker);
        void worker.terminate();
      }
      settle(answer);
      next();
    };
    const fault = (text: string) => end({ ok: false, fault: text }, false);
    const limit = setTimeout(() => fault(`no answer within ${patience / 1000} s`), patience);
    const listeners = {
      message: (answer: ComputeAnswer) => end(answer, true),
      error: (error: Error) => fault(error.stack ?? error.message),
      exit: (code: number) => fault(`the thread ended with ${code}`),
    };
    for (const [event, listener] of Object.entries(listeners)) worker.once(event, listener);
    worker.postMessage(request);
  };

  return {
    run: (request) =>
      new Promise((settle, refuse) => {
        if (waiting.length >= mostWaiting) return refuse(tooBusy());
        waiting.push({ request, settle });
        next();
      }),
    close: async () => {
      await Promise.all([...all].map((worker) => worker.terminate()));
    },
  };
}
