import type { Device, PointerInput } from "@tidewright/editor";
import { type PointerEvent, type RefObject, useEffect, useMemo, useRef } from "react";
import type { Sheet } from "./useSheet.ts";

/** Wheels that count lines go about this far for one [px]. */
const line = 16;
/** Two fingers on a track pad speak in small numbers. */
const pinchGain = 4.5;

/** Turns the browser's pointers and wheels into events of the sheet. */
export function usePointers(frame: RefObject<HTMLElement | null>, sheet: Sheet) {
  const { send, now } = sheet;
  // Where the picture lies in the window, measured when a pointer comes down: at every move it would cost a layout.
  const origin = useRef({ x: 0, y: 0 });
  const zoomed = useRef(false);
  zoomed.current = sheet.camera !== undefined;
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const within = (target: EventTarget | null) =>
      target instanceof Element && target.closest("svg.tw-picture") !== null;
    // Marks inside a picture cannot tell the browser to leave their touches alone, and React's own listeners may not.
    const hold = (event: TouchEvent) => {
      if (!within(event.target) || !event.cancelable) return;
      const { kind } = now();
      if (event.touches.length > 1 || (kind !== "Idle" && kind !== "PointingPart" && kind !== "TypingQuantity"))
        event.preventDefault();
    };
    // A tap is over once the finger lifts: what it has moved on the page must not get the click that comes after it.
    const lift = (event: TouchEvent) => {
      if (within(event.target) && event.cancelable) event.preventDefault();
    };
    const wheel = (event: WheelEvent) => {
      if (!within(event.target)) return;
      const scrolls = document.documentElement.scrollHeight > window.innerHeight + 1;
      const pinch = event.ctrlKey || event.metaKey;
      if (!pinch && scrolls && !zoomed.current) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const amount =
        event.deltaY *
        (event.deltaMode === 1 ? line : 1) *
        (event.ctrlKey && Math.abs(event.deltaY) < 40 ? pinchGain : 1);
      send({ kind: "wheel", point: { x: event.clientX - box.left, y: event.clientY - box.top }, amount });
    };
    for (const kind of ["touchstart", "touchmove"] as const) element.addEventListener(kind, hold, { passive: false });
    element.addEventListener("touchend", lift, { passive: false });
    element.addEventListener("wheel", wheel, { passive: false });
    return () => {
      for (const kind of ["touchstart", "touchmove"] as const) element.removeEventListener(kind, hold);
      element.removeEventListener("touchend", lift);
      element.removeEventListener("wheel", wheel);
    };
  }, [frame, send, now]);

  return useMemo(() => {
    const input = (event: PointerEvent<SVGSVGElement>, kind: PointerInput["kind"]): PointerInput => ({
      kind,
      pointer: event.pointerId,
      device: event.pointerType as Device,
      point: { x: event.clientX - origin.current.x, y: event.clientY - origin.current.y },
      at: event.timeStamp,
      button: event.button,
      shift: event.shiftKey,
    });
    const measure = (event: PointerEvent<SVGSVGElement>) => {
      const box = event.currentTarget.getBoundingClientRect();
      origin.current = { x: box.left, y: box.top };
    };
    return {
      onPointerDown(event: PointerEvent<SVGSVGElement>) {
        measure(event);
        if (event.button === 1) event.preventDefault();
        const over = (event.target as Element).closest("[data-over]")?.getAttribute("data-over");
        send({ ...input(event, "down"), ...(over ? { over } : {}) });
        if (now().kind !== "Idle") event.currentTarget.setPointerCapture(event.pointerId);
      },
      onPointerMove(event: PointerEvent<SVGSVGElement>) {
        const { kind } = now();
        if (kind === "Idle" || kind === "TypingQuantity" || kind === "ChoosingPart") return;
        if ((kind === "InsertingPart" || kind === "RoutingRun") && event.buttons === 0) measure(event);
        send(input(event, "move"));
      },
      onPointerUp: (event: PointerEvent<SVGSVGElement>) => void send(input(event, "up")),
      onPointerCancel: (event: PointerEvent<SVGSVGElement>) => void send(input(event, "cancel")),
    };
  }, [send, now]);
}
