import { useEffect, useState } from "react";
import { openFile } from "../document/files.ts";
import { Elevation } from "../drawing/index.ts";
import { useFormat } from "../format/useFormat.ts";
import { SourcePopover } from "../provenance/SourcePopover.tsx";
import { edit, redoEdit, select, undoEdit, useBench } from "../state/bench.ts";
import { AnswerStrip } from "./AnswerStrip.tsx";
import { Drawer } from "./Drawer.tsx";
import { Findings } from "./Findings.tsx";
import { Inspector } from "./Inspector.tsx";
import { NewDialog } from "./NewDialog.tsx";
import { ProblemsDialog } from "./ProblemsDialog.tsx";
import { SectionIndex } from "./SectionIndex.tsx";
import { TopBar } from "./TopBar.tsx";
import { UnitsDialog } from "./UnitsDialog.tsx";

/** The whole bench: answer, drawing, findings, drawer. */
export function Bench() {
  const over = useFileDrop();
  useUndoKeys();
  return (
    <div className="bench" data-drop={over ? "" : undefined}>
      <a className="skip" href="#findings">
        Skip to the findings
      </a>
      <TopBar />
      <main className="work">
        <AnswerStrip />
        <Drawing />
        <div className="side">
          <SectionIndex />
          <Inspector />
          <Findings />
        </div>
        <Drawer />
      </main>
      <Said />
      <NewDialog />
      <UnitsDialog />
      <ProblemsDialog />
      <SourcePopover />
      {over ? <p className="drop-word">Let go to open the design</p> : null}
    </div>
  );
}

function Drawing() {
  const assessed = useBench((state) => state.assessed);
  const selection = useBench((state) => state.selection);
  const [dimensions, setDimensions] = useState(true);
  const format = useFormat();
  return (
    <section className="drawing" aria-label="Side elevation to scale">
      {assessed === undefined ? null : (
        <Elevation
          design={assessed.design}
          assessment={assessed.assessment}
          selection={selection}
          onSelect={select}
          onEdit={(edits, options) => edit(edits, { ...options, label: "drag" })}
          format={format}
          showDimensions={dimensions}
        />
      )}
      <label className="drawing-switch">
        <input type="checkbox" checked={dimensions} onChange={(event) => setDimensions(event.target.checked)} /> Dimensions
      </label>
    </section>
  );
}

/** Words on what was just done, for eyes and readers; they fade from the screen by themselves. */
function Said() {
  const said = useBench((state) => state.said);
  return (
    <p className="said" role="status" key={said}>
      {said}
    </p>
  );
}

function useUndoKeys(): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const back = key === "z" && !event.shiftKey;
      const forth = (key === "z" && event.shiftKey) || key === "y";
      if (!back && !forth) return;
      // A field with text that is not taken yet keeps its own undo.
      const field = event.target instanceof HTMLInputElement ? event.target : undefined;
      if (field !== undefined && field.type === "text" && field.value !== field.defaultValue) return;
      event.preventDefault();
      if (back) undoEdit();
      else redoEdit();
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, []);
}

/** True while a file hangs over the page; a dropped file is opened. */
function useFileDrop(): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const hasFile = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
    const hang = (event: DragEvent) => {
      if (!hasFile(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      if (!hasFile(event)) return;
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file !== undefined) void openFile(file);
    };
    document.addEventListener("dragover", hang);
    document.addEventListener("dragleave", leave);
    document.addEventListener("drop", drop);
    return () => {
      document.removeEventListener("dragover", hang);
      document.removeEventListener("dragleave", leave);
      document.removeEventListener("drop", drop);
    };
  }, []);
  return over;
}
