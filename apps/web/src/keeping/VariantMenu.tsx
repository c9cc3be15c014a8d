import { lazy, Suspense, useState } from "react";
import { Menu } from "../bench/Menu.tsx";
import { compareAddress, designAddress } from "../state/address.ts";
import { useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { useKeeping } from "./keepingState.ts";

const NewVariant = lazy(async () => ({ default: (await import("./NewVariant.tsx")).NewVariant }));

/** The job that the design belongs to, its other designs and variants, and a new one. */
export function VariantMenu() {
  const { say } = useWords();
  const kept = useKeeping((state) => state.kept);
  const lookOnly = useBench((state) => state.lookOnly !== undefined);
  const [making, setMaking] = useState(false);
  if (kept === undefined) return null;
  const { head, job, siblings } = kept.surroundings;
  const others = siblings.filter(({ id }) => id !== kept.designId);
  return (
    <>
      <Menu label={head.name} className="variant-menu" title={say("keeping.variants")}>
        <a className="menu-link" href={`./#/jobs/${encodeURIComponent(head.jobId)}`}>
          {say("keeping.job")}: {job?.name ?? head.name}
        </a>
        <p className="menu-title">{say("keeping.variantsOf")}</p>
        {siblings.map(({ id, name }) => (
          <a
            key={id}
            className="menu-link"
            href={designAddress(id)}
            data-design={id}
            aria-current={id === kept.designId ? "page" : undefined}
          >
            {name}
          </a>
        ))}
        {lookOnly ? null : (
          <button type="button" onClick={() => setMaking(true)}>
            {say("keeping.newVariant")}
          </button>
        )}
        {others.length === 0 ? null : <p className="menu-title">{say("keeping.compareWith")}</p>}
        {others.map(({ id, name }) => (
          <a
            key={id}
            className="menu-link"
            href={compareAddress({ designId: kept.designId, revision: "latest" }, { designId: id, revision: "latest" })}
          >
            {name}
          </a>
        ))}
      </Menu>
      {making ? (
        <Suspense fallback={null}>
          <NewVariant kept={kept} onClose={() => setMaking(false)} />
        </Suspense>
      ) : null}
    </>
  );
}
