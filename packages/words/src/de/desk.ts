import type { desk as english } from "../en/desk.ts";

/** Der Arbeitstisch: Aufträge, Kunden, Aufbewahrtes. */
export const desk: Record<keyof typeof english, string> = {
  "desk.title": "Aufträge",
};
