import { lazy, Suspense } from "react";
import { useWords } from "../words/useWords.ts";
import { Menu } from "./Menu.tsx";

const TrialJobs = lazy(async () => ({ default: (await import("./TrialJobs.tsx")).TrialJobs }));

/** Jobs to try, and files of one's own. */
export function TrialMenu({ onFile }: { readonly onFile: () => void }) {
  const { say } = useWords();
  return (
    <Menu label={say("keeping.bar.open")}>
      <a className="menu-link" href="./">
        {say("keeping.toDesk")}
      </a>
      <p className="menu-title">{say("keeping.bar.trials")}</p>
      <Suspense fallback={null}>
        <TrialJobs />
      </Suspense>
      <p className="menu-title">{say("keeping.bar.own")}</p>
      <button type="button" onClick={onFile}>
        {say("keeping.bar.file")}
      </button>
    </Menu>
  );
}
