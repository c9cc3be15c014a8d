import { routes } from "@tidewright/protocol";
import { sayAgain } from "@tidewright/words";
import { useRef, useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { followShopCatalogue } from "../catalogue/shopRows.ts";
import { useWords } from "../words/useWords.ts";
import { jobHash } from "./deskAddress.ts";
import { refusalWords } from "./refusalWords.ts";
import { jobs } from "./shopLists.ts";

interface Problem {
  readonly path: string;
  readonly message: string;
  readonly fix: string;
}
interface Refused {
  readonly name: string;
  readonly problems: readonly Problem[];
  readonly told?: string;
}

/** A design out of a file becomes a job of its own; a file that cannot be read is answered with all that is wrong in it. */
export function ImportDesign() {
  const words = useWords();
  const { say } = words;
  const input = useRef<HTMLInputElement>(null);
  const [refused, setRefused] = useState<Refused>();
  const [busy, setBusy] = useState(false);
  const open = async (file: File) => {
    setBusy(true);
    setRefused(await keepDesign(file, (failed) => refusalWords(failed, words)));
    setBusy(false);
  };
  return (
    <>
      <button type="button" className="action" disabled={busy} onClick={() => input.current?.click()}>
        {say("desk.import")}
      </button>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label={say("desk.import")}
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = "";
          if (file) void open(file);
        }}
      />
      <Sheet
        name="refused"
        title={say("desk.cannotImport", { name: refused?.name ?? "" })}
        open={refused !== undefined}
        onClose={() => setRefused(undefined)}
      >
        {refused?.told === undefined ? null : <p className="field-problem">{refused.told}</p>}
        <ol className="problem-list">
          {refused?.problems.map((problem) => (
            <li key={`${problem.path} ${problem.message}`}>
              <code className="problem-path">{problem.path === "" ? say("desk.wholeFile") : problem.path}</code>
              <p>{sayAgain(problem.message, words)}</p>
              <p className="problem-fix">{sayAgain(problem.fix, words)}</p>
            </li>
          ))}
        </ol>
      </Sheet>
    </>
  );
}

async function keepDesign(
  file: File,
  why: (failed: Parameters<typeof refusalWords>[0]) => string,
): Promise<Refused | undefined> {
  // The reader of designs is large and the desk does without it until a file comes.
  const [{ readDesignText }, text] = await Promise.all([
    import("./readDesignText.ts"),
    file.text(),
    // A file out of this shop may name its own pumps.
    followShopCatalogue(),
  ]);
  const reading = readDesignText(text);
  if (!reading.ok) return { name: file.name, problems: reading.problems };
  const name = (reading.design.name || file.name.replace(/\.json$/i, "")).slice(0, 200);
  const job = await ask(routes.createJob, { body: { name, stage: "designing" } });
  if (!job.ok) return { name: file.name, problems: [], told: why(job) };
  const design = await ask(routes.createDesign, {
    params: { jobId: job.value.id },
    body: { name, document: reading.design },
  });
  if (!design.ok) {
    await ask(routes.removeJob, { params: { jobId: job.value.id }, ifMatch: job.value.version });
    return {
      name: file.name,
      problems: design.reason === "refused" ? (design.problem.problems ?? []) : [],
      told: why(design),
    };
  }
  jobs.put(job.value);
  location.hash = jobHash(job.value.id);
  return undefined;
}
