import { expect, it } from "vitest";
import { readBytes } from "./readBytes.ts";

/** A body of many parts, with how many were asked for. */
function bodyOf(parts: number, size: number) {
  const state = { asked: 0, cancelled: false };
  const stream = new ReadableStream<Uint8Array>(
    {
      pull: (controller) => {
        if (state.asked >= parts) return controller.close();
        state.asked++;
        controller.enqueue(new Uint8Array(size).fill(state.asked));
      },
      cancel: () => {
        state.cancelled = true;
      },
    },
    { highWaterMark: 0 },
  );
  return { stream, state };
}

it("a body within the limit is read whole and in order, to the last byte of the limit", async () => {
  const reading = await readBytes(bodyOf(3, 2).stream, "6", 6);
  expect(reading).toEqual({ ok: true, bytes: new Uint8Array([1, 1, 2, 2, 3, 3]) });
  expect(await readBytes(null, undefined, 6)).toEqual({ ok: true, bytes: new Uint8Array(0) });
});

it("a body that says it is too long is not read at all", async () => {
  const { stream, state } = bodyOf(100, 10);
  expect(await readBytes(stream, "1000", 999)).toEqual({ ok: false });
  expect(state).toEqual({ asked: 0, cancelled: true });
});

it("a body that says nothing, or too little, is read no further than the limit", async () => {
  for (const declared of [undefined, "5", "-1", "abc", ""]) {
    const { stream, state } = bodyOf(100, 10);
    expect(await readBytes(stream, declared, 45)).toEqual({ ok: false });
    expect(state).toEqual({ asked: 5, cancelled: true });
  }
});
