import type { refusals as english } from "../en/refusals.ts";

/** Why the server refused something, by the type or the status of the problem. */
export const refusals: Record<keyof typeof english, string> = {
  "refusals.unreachable": "Der Server ist nicht erreichbar. Versuchen Sie es wieder, sobald er da ist.",
  "refusals.400": "So kann dies nicht gesichert werden.",
  "refusals.401": "Sie sind abgemeldet. Melden Sie sich wieder an; was Sie geschrieben haben, ist noch hier.",
  "refusals.403": "Ihr Konto darf das nicht. Fragen Sie einen Inhaber.",
  "refusals.404": "Es ist nicht mehr da; vielleicht hat es jemand gelöscht.",
  "refusals.412": "Jemand anderes war schneller. Sehen Sie es noch einmal an und entscheiden Sie dann.",
  "refusals.413": "Das ist zu groß: höchstens 20 MB, ein Logo höchstens 1 MB.",
  "refusals.415":
    "Diese Art von Datei wird nicht angenommen. Fotos gehen als JPEG, PNG, WebP, HEIC oder AVIF, Papiere als PDF, Tabellen als CSV oder XLSX.",
  "refusals.422": "So kann dies nicht gesichert werden.",
  "refusals.429": "Zu oft in kurzer Zeit.",
  "refusals.507":
    "Die Platte des Servers ist voll. Nichts ging verloren; schaffen Sie Platz und versuchen Sie es wieder.",
  "refusals.too-busy":
    "Der Server hat gerade zu viel zu tun. Nichts wurde gesichert; versuchen Sie es in ein paar Sekunden wieder.",
  "refusals.store-unreachable":
    "Der Server erreicht seine Datenbank nicht. Nichts wurde gesichert; versuchen Sie es in ein paar Sekunden wieder.",
  "refusals.store-in-use":
    "Ein anderes Programm hält die Daten des Geschäfts. Beenden Sie es, oder versuchen Sie es in ein paar Sekunden wieder.",
  "refusals.store-newer":
    "Die Daten des Geschäfts stammen von einem neueren Programm: der Server muss aktualisiert werden.",
  "refusals.store-damaged":
    "Die Daten des Geschäfts sind beschädigt. Halten Sie den Server an und stellen Sie die letzte Sicherung in einem leeren Ordner wieder her.",
  "refusals.store-not-empty": "Dort ist schon etwas. Nichts wurde überschrieben.",
  "refusals.our-fault": "Das ist ein Fehler von Tidewright selbst. Mehr steht im Fenster des Servers.",
  "refusals.wrong-host":
    "Der Server hört nicht auf diesen Namen. Öffnen Sie ihn unter seiner Adresse, oder starten Sie ihn mit diesem Namen.",
  "refusals.tooMany": "Zu viele Versuche. Warten Sie ein paar Minuten, und versuchen Sie es dann wieder.",
  "refusals.tooManySeconds":
    "Zu viele Versuche. Versuchen Sie es in {seconds, plural, one {# Sekunde} other {# Sekunden}} wieder.",
  "refusals.tooManyMinutes":
    "Zu viele Versuche. Versuchen Sie es in {minutes, plural, one {# Minute} other {# Minuten}} wieder.",
};
