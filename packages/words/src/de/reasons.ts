import type { reasons as english } from "../en/reasons.ts";

/** Warum eine Pumpe steht, wo sie steht: Halbsätze, deren Subjekt die Pumpe ist. */
export const reasons: Record<keyof typeof english, string> = {
  "reasons.meets-aim": "gibt den gewünschten Fluss: {value}",
  "reasons.within-wish": "gibt {value}, wie gewünscht",
  "reasons.below-wish": "gibt nur {value}; gewünscht sind mindestens {limit}",
  "reasons.below-wish.backward":
    "kommt nicht hinauf: {value} liefen aus dem Schaubecken durch die anderen Abzweige zurück; gewünscht sind mindestens {limit} aufwärts",
  "reasons.above-wish": "gibt {value}; gewünscht sind höchstens {limit}",
  "reasons.lacking-movement": "ist an den {value} gemessen, die der gewünschten Umwälzung allen Wassers noch fehlen",
  "reasons.no-wish": "gibt {value}; von diesem Kreislauf ist kein Fluss gewünscht",
  "reasons.too-weak-to-lift": "erreicht höchstens {value}; die Anlage verlangt {limit}, bevor etwas fließt",
  "reasons.wrong-place": "ist nicht für diesen Ort gebaut",
  "reasons.wrong-voltage": "ist für {value} gebaut; das Netz liefert {limit}",
  "reasons.over-budget": "kostet {value}; das Budget ist {limit}",
  "reasons.over-sound": "macht {value}; gewünscht sind {limit}",
  "reasons.near-shutoff": "arbeitet bei {value} des größten Förderstroms, fast ohne Fluss",
  "reasons.near-runout": "arbeitet bei {value} des größten Förderstroms, am Ende der Kennlinie",
  "reasons.beyond-curve": "arbeitet jenseits des letzten Punkts im Datenblatt",
  "reasons.needs-controller": "braucht eine Steuerung für {value}, eingerechnet",
  "reasons.efficient-point": "arbeitet in der Mitte der Kennlinie, Gesamtwirkungsgrad {value}",
  "reasons.spare-flow": "hat {value} Reserve für ein verkrustetes Rohr",
  "reasons.cheapest": "ist am billigsten im Kauf",
  "reasons.lowest-cost-over-horizon": "ist über die Jahre am billigsten",
  "reasons.quietest": "ist am leisesten",
  "reasons.least-power": "braucht am wenigsten Strom",
  "reasons.two-pumps-redundant": "eine läuft weiter, wenn die andere ausfällt",
  "reasons.drain-cannot-carry": "fördert {value}; die Abläufe nehmen {limit} auf",
  "reasons.circuit-overload": "belastete den Stromkreis mit {value}; {limit} ist die Grenze",
  "reasons.in-tank-pump": "ist eine Strömungspumpe für das Becken",
};
