import { useEffect, useState } from "react";

const narrowQuery = typeof matchMedia === "undefined" ? undefined : matchMedia("(max-width: 44rem)");

/** Whether the screen is as narrow as a phone's, where desk.css gives a row two lines; renders again when it turns. */
export function useNarrow(): boolean {
  const [narrow, setNarrow] = useState(narrowQuery?.matches ?? false);
  useEffect(() => {
    const changed = () => setNarrow(narrowQuery?.matches ?? false);
    narrowQuery?.addEventListener("change", changed);
    return () => narrowQuery?.removeEventListener("change", changed);
  }, []);
  return narrow;
}
