import { type ReactNode, useEffect, useRef, useState } from "react";

interface Props {
  readonly label: string;
  readonly children: ReactNode;
  readonly className?: string;
  readonly title?: string;
}

/** A button with a list of buttons below it, closed by Escape, by a choice, or by a press elsewhere. */
export function Menu({ label, children, className, title }: Props) {
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!open) return;
    const elsewhere = (event: PointerEvent) => {
      if (!box.current?.contains(event.target as Node)) setOpen(false);
    };
    const onEscape = (event: KeyboardEvent) => {
      if (event.key !== "Escape") return;
      setOpen(false);
      box.current?.querySelector("button")?.focus();
    };
    document.addEventListener("pointerdown", elsewhere);
    document.addEventListener("keydown", onEscape);
    return () => {
      document.removeEventListener("pointerdown", elsewhere);
      document.removeEventListener("keydown", onEscape);
    };
  }, [open]);
  return (
    <div className={className === undefined ? "menu" : `menu ${className}`} ref={box}>
      <button type="button" className="tool" title={title} aria-expanded={open} onClick={() => setOpen(!open)}>
        {label}
      </button>
      {open ? (
        // biome-ignore lint/a11y/noStaticElementInteractions lint/a11y/useKeyWithClickEvents: the buttons inside act; this only closes
        <div className="menu-list" onClick={() => setOpen(false)}>
          {children}
        </div>
      ) : null}
    </div>
  );
}
