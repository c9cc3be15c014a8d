import { type DragEvent, type ReactNode, useId, useState } from "react";

interface ChoiceProps {
  /** What the button says. */
  readonly label: string;
  /** Kinds of files, as an input of HTML names them. */
  readonly accept: string;
  readonly multiple?: boolean;
  readonly onFiles: (files: readonly File[]) => void;
}

/** A button that asks for files with the browser's own window. */
export function FileChoice({ label, accept, multiple = false, onFiles }: ChoiceProps) {
  const id = useId();
  return (
    <>
      <label className="action" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        className="visually-hidden"
        type="file"
        multiple={multiple}
        accept={accept}
        onChange={({ target }) => {
          // Taken out before the field is emptied, which it is so that the same file can be chosen again.
          const files = [...(target.files ?? [])];
          target.value = "";
          if (files.length > 0) onFiles(files);
        }}
      />
    </>
  );
}

/** That button on ground where files may be dropped as well. */
export function FileDrop({ children, ...choice }: ChoiceProps & { readonly children: ReactNode }) {
  const [over, setOver] = useState(false);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    // What is dropped here is for this place and not for the page around it.
    event.stopPropagation();
    setOver(false);
    const files = [...event.dataTransfer.files];
    if (files.length > 0) choice.onFiles(files);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: what can be dropped here can be chosen with the button inside
    <div
      className="drop"
      data-over={over ? "" : undefined}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <FileChoice {...choice} />
      {children}
    </div>
  );
}
