import { select, useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";

const sections = [
  ["", "job"],
  ["/wishes", "wishes"],
  ["/display", "display"],
  ["/overflow", "overflow"],
  ["/drains", "drains"],
  ["/sump", "sump"],
  ["/topOff", "topOff"],
  ["/loops", "loops"],
  ["/tankPumps", "tankPumps"],
  ["/power", "power"],
  ["/water", "water"],
  ["/room", "room"],
] as const;

/** The way to every section of the design without the drawing. */
export function SectionIndex() {
  const { say } = useWords();
  const selection = useBench((state) => state.selection);
  return (
    <nav className="section-index" aria-label={say("parts.sections")}>
      {sections.map(([path, name]) => {
        const within = selection !== undefined && (path === "" ? selection === "" : selection.startsWith(path));
        return (
          <button
            key={path}
            type="button"
            aria-current={within ? "true" : undefined}
            onClick={() => select(within && selection === path ? undefined : path)}
          >
            {say(`parts.section.${name}`)}
          </button>
        );
      })}
    </nav>
  );
}
