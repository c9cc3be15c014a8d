import { type Link, routes } from "@tidewright/protocol";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { useWords } from "../words/useWords.ts";
import { KeptChoice } from "./KeptField.tsx";
import { LinkTable } from "./LinkTable.tsx";
import { MakeLink } from "./MakeLink.tsx";
import { refusalWords } from "./refusalWords.ts";
import { useAsked } from "./useAsked.ts";

interface Props {
  readonly jobId: string;
  readonly readOnly: boolean;
}

/** Doors for the customer: who may look at which design, and until when. */
export function JobLinks({ jobId, readOnly }: Props) {
  const words = useWords();
  const { say } = words;
  const links = useAsked(`links ${jobId}`, () => ask(routes.links, { query: { jobId } }));
  const designs = useAsked(
    `designs for links ${jobId}`,
    () => ask(routes.designsOfJob, { params: { jobId } }),
    (change) => change.kind === "design" && change.jobId === jobId,
  );
  const [open, setOpen] = useState(false);
  const heads = designs.value?.items ?? [];
  const shown = (link: Link) => {
    const name = heads.find(({ id }) => id === link.designId)?.name ?? say("desk.aDesign");
    return link.revision === null
      ? say("desk.linkLatest", { name })
      : say("desk.linkRevision", { name, revision: link.revision });
  };
  return (
    <section className="desk-block">
      <div className="block-head">
        <h2>{say("desk.links")}</h2>
        {readOnly || heads.length === 0 ? null : (
          <button type="button" className="action" onClick={() => setOpen(true)}>
            {say("desk.share")}
          </button>
        )}
      </div>
      {links.failed !== undefined && links.value === undefined ? (
        <p className="field-problem">{refusalWords(links.failed, words)}</p>
      ) : null}
      {links.value?.items.length === 0 ? <p className="quiet">{say("desk.noLinks")}</p> : null}
      <LinkTable links={links.value?.items ?? []} nameOf={shown} readOnly={readOnly} onChanged={links.again} />
      <Sheet name="share" title={say("desk.shareTitle")} open={open} onClose={() => setOpen(false)}>
        <Sharing heads={heads} onMade={links.again} />
      </Sheet>
    </section>
  );
}

interface SharingProps {
  readonly heads: readonly { readonly id: string; readonly name: string; readonly revision: number }[];
  readonly onMade: () => Promise<void>;
}

function Sharing({ heads, onMade }: SharingProps) {
  const { say } = useWords();
  const [designId, setDesign] = useState(heads[0]?.id ?? "");
  const [fixed, setFixed] = useState(false);
  const revision = heads.find(({ id }) => id === designId)?.revision ?? 1;
  return (
    <MakeLink
      opens={{ kind: "view", designId, ...(fixed ? { revision } : {}) }}
      explain={say("desk.shareExplain")}
      spans={[7, 30, 90, 365]}
      span={30}
      onMade={onMade}
    >
      <KeptChoice label={say("desk.whichDesign")} value={designId} onChange={setDesign}>
        {heads.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </KeptChoice>
      <KeptChoice
        label={say("desk.whichState")}
        value={fixed ? "fixed" : "latest"}
        onChange={(value) => setFixed(value === "fixed")}
      >
        <option value="latest">{say("desk.alwaysLatest")}</option>
        <option value="fixed">{say("desk.onlyRevision", { revision })}</option>
      </KeptChoice>
    </MakeLink>
  );
}
