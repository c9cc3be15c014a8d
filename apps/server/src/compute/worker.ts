import { parentPort } from "node:worker_threads";
import { compute } from "./compute.ts";
import type { ComputeRequest } from "./computeRequest.ts";

// A thread that computes, one request after the other, so that the thread of the store is free to answer.
parentPort?.on("message", (request: ComputeRequest) => {
  parentPort?.postMessage(compute(request));
});
