import { useWords } from "../words/useWords.ts";
import type { LoadedKeeper } from "./useKeeper.ts";

interface Props {
  readonly missing: LoadedKeeper<never, never>["missing"];
  /** What is said where there is no such record. */
  readonly notFound: string;
  /** Address of the list, and what its way there is called. */
  readonly back: string;
  readonly all: string;
}

/** A page whose record is still on its way, or is not to be had. */
export function Missing({ missing, notFound, back, all }: Props) {
  const { say } = useWords();
  if (missing === undefined)
    return (
      <p className="quiet desk-wait" role="status">
        {say("desk.loading")}
      </p>
    );
  return (
    <section className="desk-missing">
      <h1>{missing === "notFound" ? notFound : say(`desk.missing.${missing}`)}</h1>
      <p>
        <a className="action" href={back}>
          {all}
        </a>
      </p>
    </section>
  );
}
