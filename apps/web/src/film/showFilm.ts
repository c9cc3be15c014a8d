import type { Design } from "@tidewright/design";
import { show } from "../state/bench.ts";
import { isWideScreen } from "../state/useWideScreen.ts";
import { openFilm } from "./filmState.ts";

/** Opens a film on the drawing and gives it the room: the drawer shuts on a wide screen, the page goes up to it on a narrow one. */
export function showFilm(design: Design, scenarioId: string, at: "start" | "worst" = "start"): void {
  openFilm(design, scenarioId, at);
  if (isWideScreen()) show({ drawerOpen: false });
  // After React has drawn it: before that there is nothing to go to.
  requestAnimationFrame(() => {
    document.querySelector<HTMLElement>(".film-play")?.focus({ preventScroll: true });
    if (!isWideScreen()) document.querySelector(".film")?.scrollIntoView({ block: "start" });
  });
}
