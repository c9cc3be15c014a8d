import { select, useBench } from "../state/bench.ts";

const sections: readonly (readonly [string, string])[] = [
  ["", "Job"],
  ["/wishes", "Wishes"],
  ["/display", "Display"],
  ["/overflow", "Overflow"],
  ["/drains", "Drains"],
  ["/sump", "Sump"],
  ["/topOff", "Top-off"],
  ["/loops", "Loops"],
  ["/tankPumps", "In the tank"],
  ["/power", "Power"],
  ["/water", "Water"],
  ["/room", "Room"],
];

/** The way to every section of the design without the drawing. */
export function SectionIndex() {
  const selection = useBench((state) => state.selection);
  return (
    <nav className="section-index" aria-label="Sections of the design">
      {sections.map(([path, label]) => {
        const within = selection !== undefined && (path === "" ? selection === "" : selection.startsWith(path));
        return (
          <button
            key={path}
            type="button"
            aria-current={within ? "true" : undefined}
            onClick={() => select(within && selection === path ? undefined : path)}
          >
            {label}
          </button>
        );
      })}
    </nav>
  );
}
