import {
  type Camera,
  cameraView,
  idle,
  type SheetContext,
  type SheetEvent,
  type SheetState,
  step,
} from "@tidewright/editor";
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { problemWords } from "../words/problemWords.ts";
import { useWords } from "../words/useWords.ts";
import { type SheetHands, said } from "./sheetHands.ts";

/** The drawing's state with what it takes to go on from it. */
export interface Sheet {
  readonly state: SheetState;
  readonly camera: Camera | undefined;
  /** True while the sheet is being moved or zoomed: labels then keep their places. */
  readonly moving: boolean;
  /** Why the last thing that was tried was not done. */
  readonly refused: string | undefined;
  readonly help: boolean;
  closeHelp(): void;
  /** Plays an event; returns whether it meant anything. */
  send(event: SheetEvent): boolean;
  /** Tells what the sheet stands for at the moment. */
  know(context: SheetContext): void;
  /** Path of the part that the keyboard should go to next, once. */
  takeFocus(): string | undefined;
  now(): SheetState;
}

/** How long a word on why something was not done stays [ms], and how long a sheet at rest waits for its labels [ms]. */
const refusedTime = 7000;
const restTime = 140;

/** Runs the state chart of the drawing: events go in, and what it wants done is done by the hands. */
export function useSheet(hands: SheetHands | undefined, toFocus: () => boolean): Sheet {
  const words = useWords();
  const [state, setState] = useState<SheetState>(idle);
  const [camera, setCamera] = useState<Camera>();
  const [moving, setMoving] = useState(false);
  const [refused, setRefused] = useState<string>();
  const [help, setHelp] = useState(false);
  const live = useRef<{ state: SheetState; context?: SheetContext; frame?: number; focus?: string | undefined }>({
    state: idle,
  });
  const rest = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => {
    if (refused === undefined) return;
    const timer = setTimeout(() => setRefused(undefined), refusedTime);
    return () => clearTimeout(timer);
  }, [refused]);

  const look = useCallback((next: Camera | undefined) => {
    const { context, frame } = live.current;
    if (context) live.current.context = { ...context, view: cameraView(context.whole, next) };
    // Wheels and fingers speak faster than the screen draws.
    if (frame !== undefined) cancelAnimationFrame(frame);
    live.current.frame = requestAnimationFrame(() => {
      setCamera(next);
      setMoving(true);
      clearTimeout(rest.current);
      rest.current = setTimeout(() => setMoving(false), restTime);
    });
  }, []);

  const send = useCallback(
    (event: SheetEvent): boolean => {
      const { context, state: before } = live.current;
      if (context === undefined) return false;
      const fresh = hands === undefined ? context : { ...context, design: hands.design() };
      const result = step(before, event, fresh);
      // Without hands the sheet can be looked at, and parts be pointed out.
      const bound =
        hands === undefined && !["Idle", "PointingPart", "PanningSheet", "PinchingSheet"].includes(result.state.kind);
      const after = bound ? idle : result.state;
      live.current.state = after;
      if (after !== before) setState(after);
      for (const effect of result.effects) {
        if (effect.kind === "look") look(effect.camera);
        else if (effect.kind === "help") setHelp(true);
        else if (effect.kind === "refuse") setRefused(said(words, effect.why));
        else if (hands === undefined) continue;
        else if (effect.kind === "select") {
          setRefused(undefined);
          hands.select(effect.path);
        } else if (effect.kind === "drop") hands.drop(effect.dragKey);
        else if (effect.kind === "rank") hands.rank(effect.loop);
        else {
          const problem = hands.edit(effect.edits, effect);
          if (problem !== undefined) {
            if (effect.dragKey === undefined) setRefused(words.say("drawing.why.notSound", problemWords(problem)));
          } else if (effect.hold !== null) {
            setRefused(undefined);
            hands.select(effect.hold);
            if (toFocus()) live.current.focus = effect.hold;
          }
        }
      }
      return after !== before || result.effects.length > 0;
    },
    [hands, look, toFocus, words],
  );
  const closeHelp = useCallback(() => setHelp(false), []);
  const know = useCallback((context: SheetContext) => {
    live.current.context = context;
  }, []);
  const takeFocus = useCallback(() => {
    const { focus } = live.current;
    live.current.focus = undefined;
    return focus;
  }, []);
  const now = useCallback(() => live.current.state, []);
  // The same sheet all through a drag, so that nothing that lies on it is drawn anew.
  return useMemo(
    () => ({ state, camera, moving, refused, help, closeHelp, send, know, takeFocus, now }),
    [state, camera, moving, refused, help, closeHelp, send, know, takeFocus, now],
  );
}
