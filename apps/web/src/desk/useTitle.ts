import { useEffect } from "react";

/** The window bears the name of what is on it. */
export function useTitle(name: string): void {
  useEffect(() => {
    document.title = name === "" ? "Tidewright" : `${name} · Tidewright`;
    return () => {
      document.title = "Tidewright";
    };
  }, [name]);
}
