import { assess } from "@tidewright/advice";
import { useMemo } from "react";
import { FaultScreen } from "../bench/FaultScreen.tsx";
import { useCatalogue } from "../catalogue/currentCatalogue.ts";
import { Elevation } from "../drawing/index.ts";
import { useFormat } from "../format/useFormat.ts";
import { authorWords } from "../keeping/openKept.ts";
import { useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { goBackTo } from "./versionActions.ts";
import { type Looking, showVersions } from "./versionsState.ts";
import { versionTitle } from "./versionTitle.ts";

interface Props {
  readonly looking: Looking;
  readonly height: number;
}

/** An older version in the place of the drawing: with its own numbers, and nothing on it can be moved. */
export function VersionDrawing({ looking, height }: Props) {
  const words = useWords();
  const { say, instant } = words;
  const format = useFormat();
  const mayChange = useBench((state) => state.lookOnly === undefined);
  const { entry, design } = looking;
  const catalogue = useCatalogue();
  const assessment = useMemo(() => assess(design, catalogue), [design, catalogue]);
  const said = { version: versionTitle(entry, words), at: instant(entry.at), author: authorWords(entry.author) };
  return (
    <div className="version-drawing">
      <p className="version-banner" role="status">
        <span>{say("keeping.versionLooking", said)}</span>
        {mayChange ? (
          <button type="button" className="action" onClick={() => void goBackTo(entry)}>
            {say("keeping.versionBack")}
          </button>
        ) : null}
        <button type="button" className="action action-strong" onClick={() => showVersions({ looking: undefined })}>
          {say("keeping.versionShut")}
        </button>
      </p>
      <FaultScreen what={say("keeping.bar.theDrawing")} again={design}>
        <Elevation
          design={design}
          assessment={assessment}
          selection={undefined}
          format={format}
          height={Math.max(200, height - 56)}
        />
      </FaultScreen>
    </div>
  );
}
