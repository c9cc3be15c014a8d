import { demoJobs } from "../document/demoJobs.ts";
import { openDesign } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { Menu } from "./Menu.tsx";

/** Jobs to try, and files of one's own. */
export function TrialMenu({ onFile }: { readonly onFile: () => void }) {
  const { say } = useWords();
  return (
    <Menu label={say("keeping.bar.open")}>
      <a className="menu-link" href="./">
        {say("keeping.toDesk")}
      </a>
      <p className="menu-title">{say("keeping.bar.trials")}</p>
      {demoJobs.map(({ id, design }) => (
        <button
          key={id}
          type="button"
          data-job={id}
          onClick={() => openDesign(design, say("keeping.bar.opened", { name: design.name }))}
        >
          {design.name}
        </button>
      ))}
      <p className="menu-title">{say("keeping.bar.own")}</p>
      <button type="button" onClick={onFile}>
        {say("keeping.bar.file")}
      </button>
    </Menu>
  );
}
