import type { curves as english } from "../en/curves.ts";

/** Das Bild der Kennlinien. */
export const curves: Record<keyof typeof english, string> = {
  "curves.label": "Pumpen- und Anlagenkennlinie von {loop}, abgelesen bei einem Förderstrom",
  "curves.flowAxis": "Förderstrom, {unit}",
  "curves.headAxis": "Förderhöhe, {unit}",
  "curves.aim": "Ziel",
  "curves.wished": "gewünscht",
  "curves.static": "statisch {head}",
  "curves.noFlow": "kein Fluss: erst sind {head} zu überwinden",
  "curves.point": "{flow} bei {head}",
  "curves.range": "{low} bis {high}",
  "curves.along": "bei {share} der Kennlinie",
  "curves.pumpGives": "Pumpe gibt {head}",
  "curves.beyond": "jenseits der Pumpenkennlinie",
  "curves.systemAsks": "Anlage verlangt {head}",
  "curves.system": "Anlage",
  "curves.fullSpeed": "volle Drehzahl",
  "curves.manyFullSpeed": "{count} Pumpen, volle Drehzahl",
  "curves.onePump": "eine Pumpe",
  "curves.speed": "{share} Drehzahl",
  "curves.manySpeed": "{count} Pumpen, {share} Drehzahl",
};
