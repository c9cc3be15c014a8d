import type { cautions as english } from "../en/cautions.ts";

/** Die üblichen Hinweise zur Arbeit an einem Teil. */
export const cautions: Record<keyof typeof english, string> = {
  "cautions.electricity":
    "Hier treffen sich Wasser und Netzstrom. Alles über einen Fehlerstromschutzschalter (FI) speisen, Tropfschlaufen unter die Steckdosen hängen, Steckdosen außer Reichweite von Spritzern. Feste Leitungen verlegt die Elektrofachkraft; örtliche Vorschrift entscheidet.",
  "cautions.continuousLoad":
    "Pumpen ruhen nie: Belasten Sie einen Stromkreis höchstens mit 80 % seiner Sicherung, Heizer und Kühler eingerechnet.",
  "cautions.lifting":
    "Glasbecken sind schwerer, als sie aussehen: leer, zu zweit oder mit Saughebern; nie am Rand heben, nie mit Wasser bewegen. Der Boden muss das volle Gewicht tragen.",
  "cautions.cement":
    "PVC-Kleber und Reiniger: Fenster auf, keine Flamme, Handschuhe; Klebestellen nach Herstellerangabe aushärten lassen und spülen, bevor Tiere ins Wasser kommen.",
  "cautions.drilling": "Nur Glas bohren, das sicher nicht vorgespannt ist, nass und langsam, mit Augenschutz.",
  "cautions.flood":
    "Eine Rückschlagklappe allein schützt nicht vor Überlauf: Zugewachsen klemmt sie. Im Technikbecken Platz für das Zurücklaufende lassen und mit gezogenem Stecker prüfen, bevor Sie gehen.",
  "cautions.dryPump":
    "Eine trocken stehende Pumpe braucht den Einlass unter der Wasserlinie und Luft um sich; Verschraubung und Ventil auf beiden Seiten erlauben die Wartung.",
};
