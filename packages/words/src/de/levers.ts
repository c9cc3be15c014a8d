import type { levers as english } from "../en/levers.ts";

/** Einzelne Änderungen, die helfen. */
export const levers: Record<keyof typeof english, string> = {
  "levers.size-up": "{from} auf {to}",
  "levers.sweep-elbows": "{count, plural, one {# Winkel} other {# Winkel}} durch Bögen ersetzen",
  "levers.open-valve": "Ventil ganz öffnen",
  "levers.larger-nozzle": "Düse {from} auf {to} {unit}",
  "levers.remove-nozzle": "Auslauf ohne Düse",
  "levers.add-union": "Verschraubung an der Pumpe",
  "levers.speed": "Drehzahl {from} % auf {to} %",
  "levers.add-controller": "Steuerung mitbestellen",
  "levers.move-into-sump": "Pumpe ins Technikbecken",
  "levers.move-outside": "Pumpe nach außen",
  "levers.operating-level": "Betriebspegel auf {to} mm",
  "levers.operating-level-from": "Betriebspegel {from} mm auf {to} mm",
  "levers.longer-weir": "Überlaufkante ein Viertel länger",
  "levers.raise-siphon-break": "Belüftungsbohrung 10 mm unter der Oberfläche",
  "levers.siphon-breaks":
    "Belüftungsbohrung {depth} mm unter dem Betriebspegel an {count, plural, one {# Auslauf} other {# Ausläufen}}",
  "levers.add-emergency-drain": "trockener Notüberlauf, eine Nennweite größer",
  "levers.taller-sump": "Glas des Technikbeckens {from} mm auf {to} mm",
};
