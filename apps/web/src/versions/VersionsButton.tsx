import { useWords } from "../words/useWords.ts";
import { showVersions, useVersions } from "./versionsState.ts";

/** Takes the list of versions out and puts it away. */
export function VersionsButton() {
  const { say } = useWords();
  const open = useVersions((state) => state.open);
  return (
    <button type="button" className="tool" aria-expanded={open} onClick={() => showVersions({ open: !open })}>
      {say("keeping.versions")}
    </button>
  );
}
