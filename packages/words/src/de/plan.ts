import type { plan as english } from "../en/plan.ts";

/** Das Becken von oben: seine Teile, und wie man sie verschiebt. */
export const plan: Record<keyof typeof english, string> = {
  "plan.title": "Grundriss, von oben",
  "plan.of": "Grundriss von {name}, von oben, maßstäblich",
  "plan.front": "Frontscheibe",
  "plan.side": "Seite",
  "plan.top": "Von oben",
  "plan.both": "Beides",
  "plan.views": "Welche Ansicht gezeichnet wird",
  "plan.kind.display": "Schaubecken",
  "plan.kind.zone": "Zone",
  "plan.kind.box": "Ablaufschacht",
  "plan.kind.hole": "Ablauf",
  "plan.kind.outlet": "Auslass",
  "plan.kind.tankPump": "Strömungspumpe",
  "plan.unplaced": "Platz noch nicht angegeben",
  "plan.spoken": "{name}, {x} von links, {y} von vorn",
  "plan.step.move": "im Grundriss verschieben",
  "plan.step.zone": "Zone einzeichnen",
  "plan.drawIn": "Einzeichnen: {zone}",
  "plan.zonesToDraw": "Zonen ohne Platz:",
  "plan.keys":
    "Pfeiltasten verschieben das gewählte Teil, mit Umschalt in größeren Schritten; mit Alt drehen sie eine Pumpe oder verschieben die andere Ecke einer Zone.",
};
