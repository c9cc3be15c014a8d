import { useWords } from "../words/useWords.ts";
import type { LoadedKeeper } from "./useKeeper.ts";

interface Props {
  readonly missing: LoadedKeeper<never, never>["missing"];
  readonly back: string;
  readonly what: "job" | "customer";
}

/** A page whose record is still on its way, or is not to be had. */
export function Missing({ missing, back, what }: Props) {
  const { say } = useWords();
  if (missing === undefined)
    return (
      <p className="quiet desk-wait" role="status">
        {say("desk.loading")}
      </p>
    );
  return (
    <section className="desk-missing">
      <h1>{say(missing === "notFound" ? `desk.missing.${what}` : `desk.missing.${missing}`)}</h1>
      <p>
        <a className="action" href={back}>
          {say(what === "job" ? "desk.allJobs" : "desk.allCustomers")}
        </a>
      </p>
    </section>
  );
}
