import type { sources as english } from "../en/sources.ts";

/** Woher Grenzen stammen. */
export const sources: Record<keyof typeof english, string> = {
  "sources.pressurePipeSpeed":
    "übliche Praxis, ohne Quelle: bis 1,5 m/s in kleinen Druckleitungen bleiben Geräusch und Verlust gering",
  "sources.suctionPipeSpeed": "übliche Praxis, ohne Quelle: bis 1 m/s auf der Saugseite",
  "sources.slowPipeSpeed": "übliche Praxis, ohne Quelle: unter 0,3 m/s setzt sich Detritus im Rohr ab",
  "sources.jetSpeed": "übliche Praxis, ohne Quelle: über 4 m/s zischt eine Düse und verletzt, was vor ihr ist",
  "sources.nearShutoff":
    "übliche Praxis, ohne Quelle: unter einem Zehntel des größten Förderstroms wird eine Pumpe heiß und brummt",
  "sources.nearRunout": "übliche Praxis, ohne Quelle: am Ende der Kennlinie ist eine Pumpe laut, und ihre Daten enden",
  "sources.quietFroude":
    "selbstbelüftender Abfluss, Fr 0,3 (nach Hills 1983 und Simpson 1978), und das belüftete Fallrohr bei 7/24 (Wyly und Eaton 1961)",
  "sources.practice": "übliche Praxis, ohne Quelle: Faustregeln für Abläufe von 1, 1 1/2 und 2 Zoll",
  "sources.siphon": "Energiegleichung des vollen Rohrs",
  "sources.clearingFroude": "über etwa Fr 1 wird Luft ausgespült (nach Hills 1983 und Simpson 1978)",
  "sources.freeboard": "übliche Praxis, ohne Quelle: 20 mm bis zum Rand",
  "sources.sumpReserve": "übliche Praxis, ohne Quelle: ein Zehntel des Rücklaufvolumens als Reserve",
  "sources.npshMargin": "übliche Praxis, ohne Quelle: 3 m reichen für jede Pumpe dieser Größe",
  "sources.circuit":
    "Dauerlast höchstens 80 % der Sicherung (US National Electrical Code 210.20(A)); örtliche Vorschrift entscheidet",
  "sources.returnDepth": "übliche Praxis, ohne Quelle: 80 mm über dem Einlass, damit keine Luft eingezogen wird",
  "sources.settled": "eigene Grenze: Flüsse und Höhen auf 1e-9 ihrer selbst, Pegel auf 1e-7 m",
  "sources.turbulent":
    "zwischen den Reynolds-Zahlen 2000 und 4000 weichen veröffentlichte Reibungskurven um 30 % voneinander ab (bei 3000 Churchill 1977 und Dunlop 1991)",
  "sources.geometry": "Geometrie",
  "sources.wish": "die Wünsche dieses Entwurfs",
  "sources.maker": "Angaben des Herstellers",
  "sources.service": "übliche Praxis, ohne Quelle: Was verschleißt, muss ohne Säge herauskommen",
  "sources.caution": "übliche Vorsicht; örtliche Vorschrift und Fachleute entscheiden",
  "sources.hangOn":
    "übliche Praxis, ohne Quelle: Am Scheitel eines Siphons sammelt sich Luft und hält ihn eines Tages an; Zeit aus der Kontinuität",
  "sources.simulated": "eigene Simulation aller Pegel",
  "sources.commonPractice": "übliche Praxis, ohne Quelle",
  "sources.softCorals":
    "Fabricius, Genin und Benayahu 1995: Futteraufnahme von Dendronephthya am besten um 15 cm/s; Umwälzung übliche Praxis, ohne Quelle",
  "sources.largePolypStony":
    "Wijgerde et al. 2012: Galaxea-Kolonien fressen am besten bei 5 bis 10 cm/s; Umwälzung übliche Praxis, ohne Quelle",
  "sources.branchingStony":
    "Nakamura und Yamasaki 2005: besseres Wachstum bei 20 als unter 3 cm/s; Umwälzung übliche Praxis, ohne Quelle",
  "sources.start.shaft": "Randüberfall und ertränkter Hals eines Standrohrs: USBR, Design of Small Dams",
  "sources.start.weir": "Th. Rehbock 1929 in ISO 1438:2017 ohne das Höhenglied; Strom wie gewünscht",
  "sources.start.ranking": "Rangfolge des Katalogs für diese Anlage",
  "sources.start.affinity": "Ähnlichkeitsgesetze (ISO 9906:2012); für diese Anlage gelöst",
  "sources.start.salinity": "praktischer Salzgehalt 35: UNESCO Technical Papers in Marine Science 44 (1983)",
  "sources.start.evaporation":
    "Verdunstung: ASHRAE Handbook HVAC Applications, Natatoriums; eine Woche übliche Praxis, ohne Quelle",
  "sources.start.tubes": "Verlusthöhe voller Rohre: Energiegleichung; Verluste nach Crane TP-410",
};
