import { type KeyboardEvent, lazy, Suspense, useRef } from "react";
import { show, useBench } from "../state/bench.ts";
import type { DrawerTab } from "../state/benchState.ts";
import { useWideScreen } from "../state/useWideScreen.ts";
import { useWords } from "../words/useWords.ts";

// What lies in a shut drawer is loaded when it is opened.
const RankingTable = lazy(async () => ({ default: (await import("./RankingTable.tsx")).RankingTable }));
const Levers = lazy(async () => ({ default: (await import("./Levers.tsx")).Levers }));
const PartsTable = lazy(async () => ({ default: (await import("./PartsTable.tsx")).PartsTable }));
const CostSheet = lazy(async () => ({ default: (await import("./CostSheet.tsx")).CostSheet }));
const SafetySheet = lazy(async () => ({ default: (await import("../film/SafetySheet.tsx")).SafetySheet }));

const tabs: readonly DrawerTab[] = ["pumps", "levers", "parts", "sheet", "safety"];

/** The sections under the drawing, one at a time; pressing the open one shuts the drawer on a wide screen. */
export function Drawer() {
  const tab = useBench((state) => state.tab);
  const open = useBench((state) => state.drawerOpen);
  const { say } = useWords();
  // What cannot be seen is not drawn: a drag has one frame for everything that can.
  const seen = useWideScreen() ? open : true;
  const list = useRef<HTMLDivElement>(null);
  const step = (event: KeyboardEvent) => {
    const by = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
    if (by === 0) return;
    event.preventDefault();
    const place = (tabs.indexOf(tab) + by + tabs.length) % tabs.length;
    show({ tab: tabs[place]!, drawerOpen: true });
    list.current?.querySelectorAll<HTMLElement>('[role="tab"]')[place]?.focus();
  };
  return (
    <section className="drawer" data-open={open ? "" : undefined} aria-label={say("bench.drawer.label")}>
      <div className="drawer-bar">
        <div className="tabs" role="tablist" aria-label={say("bench.drawer.sections")} ref={list}>
          {tabs.map((id) => (
            <button
              key={id}
              type="button"
              role="tab"
              id={`tab-${id}`}
              aria-selected={tab === id}
              aria-controls="drawer-panel"
              tabIndex={tab === id ? 0 : -1}
              onKeyDown={step}
              onClick={() => show({ tab: id, drawerOpen: tab === id ? !open : true })}
            >
              {say(`bench.drawer.${id}`)}
            </button>
          ))}
        </div>
        <button
          type="button"
          className="icon-button drawer-shut"
          aria-expanded={open}
          aria-controls="drawer-panel"
          aria-label={say(open ? "bench.drawer.shut" : "bench.drawer.open")}
          onClick={() => show({ drawerOpen: !open })}
        >
          <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
            <path d={open ? "m3 6 5 5 5-5" : "m3 10 5-5 5 5"} />
          </svg>
        </button>
      </div>
      <div
        className="drawer-panel"
        id="drawer-panel"
        role="tabpanel"
        aria-labelledby={`tab-${tab}`}
        hidden={!open}
        data-tab={tab}
      >
        <Suspense fallback={null}>
          {seen && tab === "pumps" ? <RankingTable /> : null}
          {seen && tab === "levers" ? <Levers /> : null}
          {seen && tab === "safety" ? <SafetySheet /> : null}
          {seen && tab === "parts" ? <PartsTable /> : null}
          {seen && tab === "sheet" ? <CostSheet /> : null}
        </Suspense>
      </div>
    </section>
  );
}
