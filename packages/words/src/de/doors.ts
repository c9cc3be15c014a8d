import type { doors as english } from "../en/doors.ts";

/** Türen: Anmelden, der erste Inhaber und was ein Kunde über einen Link sieht. */
export const doors: Record<keyof typeof english, string> = {
  "doors.title": "Anmelden",
  "doors.name": "Name",
  "doors.password": "Passwort",
  "doors.newPassword": "Neues Passwort",
  "doors.currentPassword": "Jetziges Passwort",
  "doors.show": "Zeigen",
  "doors.hide": "Verbergen",
  "doors.signIn": "Anmelden",
  "doors.forgotten": "Vergessen? Ein Inhaber des Geschäfts gibt Ihnen ein neues.",
  "doors.foot": "Welche Pumpe das Wasser in diesem Becken bewegt, und warum.",
  "doors.both": "Geben Sie Ihren Namen und Ihr Passwort ein.",
  "doors.wrong": "Name und Passwort gehören nicht zusammen. Prüfen Sie beide, auch Groß- und Kleinschreibung.",
  "doors.currentWrong": "Das jetzige Passwort stimmt nicht.",
  "doors.unreachable":
    "Der Server ist nicht erreichbar. Prüfen Sie, ob dieses Gerät im Netz des Geschäfts ist, und versuchen Sie es wieder.",
  "doors.passwordShort":
    "Nehmen Sie mindestens {least, number} Zeichen; vier Wörter hintereinander merken sich leicht.",
  "doors.passwordHint": "Mindestens {least, number} Zeichen. Länge zählt mehr als Sonderzeichen: Vier Wörter genügen.",
  "doors.firstOwner": "Der erste Inhaber",
  "doors.firstOwnerExplain":
    "Hier hat noch niemand ein Konto. Der Server hat beim Start ein Geheimwort in sein Fenster geschrieben, das einmal gilt; es beweist, dass dies Ihr Geschäft ist.",
  "doors.token": "Das Geheimwort aus dem Fenster des Servers",
  "doors.makeOwner": "Mich zum Inhaber machen",
  "doors.allThree": "Geben Sie das Geheimwort aus dem Fenster des Servers, Ihren Namen und ein Passwort ein.",
  "doors.tokenWrong":
    "Dieses Geheimwort öffnet die Tür nicht. Kopieren Sie es aus dem Fenster des Servers, der jetzt läuft.",

  "doors.opening": "Wird geöffnet…",
  "doors.linkClosed": "Dieser Link öffnet nichts mehr; bitten Sie das Geschäft um einen neuen.",
  "doors.linkUnreachable": "Der Server des Geschäfts ist gerade nicht erreichbar; Ihr Link gilt weiter.",
  "doors.again": "Noch einmal",
  "doors.logoOf": "Logo von {shop}",
  "doors.asOf": "Stand {when}",
  "doors.theDrawing": "die Zeichnung, von der Seite und maßstäblich",
  "doors.drawing": "Wird gezeichnet…",
  "doors.reckoning": "Wird gerechnet…",
  "doors.cannotDraw":
    "Diese Planung enthält Teile, die diese Seite nicht kennt. Bitten Sie das Geschäft um eine gedruckte Zeichnung.",
  "doors.cannotReckon": "Unser Fehler: Die Zahlen ließen sich nicht berechnen. Bitte sagen Sie es dem Geschäft.",
  "doors.whatItDoes": "Was die Anlage leistet",
  "doors.timesAnHour": "{times}× je Stunde",
  "doors.flow": "Wasser hinauf ins Becken",
  "doors.flowText": "{pump} hebt es aus dem Technikbecken darunter.",
  "doors.noPump": "Noch ist keine Pumpe gewählt.",
  "doors.turnover": "Durch den Filter",
  "doors.turnoverText": "So oft läuft das ganze Beckenwasser durch das Technikbecken.",
  "doors.turnoverWish": "So oft läuft das ganze Beckenwasser durch das Technikbecken; gewünscht sind {low} bis {high}.",
  "doors.moved": "Mit den Strömungspumpen im Becken wird das Wasser insgesamt {times} bewegt.",
  "doors.power": "Strom",
  "doors.aYear": "im Jahr",
  "doors.powerText": "{power} Tag und Nacht, {energy} im Jahr: Pumpen und Geräte dieser Zeichnung.",
  "doors.sound": "Geräusch",
  "doors.soundText": "Alle Pumpen zusammen, nach Angabe der Hersteller.",
  "doors.soundUnder": "Alle Pumpen zusammen, nach Angabe der Hersteller; gewünscht sind höchstens {wish}.",
  "doors.soundOver": "Alle Pumpen zusammen, nach Angabe der Hersteller; das ist mehr als die gewünschten {wish}.",
  "doors.powerCut": "Bei Stromausfall",
  "doors.floorComing": "wird gerade gerechnet",
  "doors.floorDry": "der Boden bleibt trocken",
  "doors.floorWet": "der Boden wird nass",
  "doors.roomLeft": "Was zurückläuft, findet Platz im Technikbecken; {volume} bleiben frei.",
  "doors.tooLittleRoom": "Was zurückläuft, ist {volume} mehr, als das Technikbecken fasst.",
  "doors.runsBack": "{volume} laufen ins Technikbecken zurück.",
  "doors.mishaps": "Wenn etwas ausfällt",
  "doors.mishapsDry": "trocken in {dry, number} von {all, number} Fällen",
  "doors.mishapsAllDry":
    "Verstopfte Abläufe, eine ausgefallene Pumpe, ein hängendes Ventil und mehr wurden durchgespielt: In allen Fällen bleibt der Boden trocken.",
  "doors.mishapsWet":
    "Verstopfte Abläufe, eine ausgefallene Pumpe, ein hängendes Ventil und mehr wurden durchgespielt: {wet, plural, one {In einem Fall} other {In # Fällen}} wird der Boden nass. Fragen Sie das Geschäft, was dagegen geplant ist.",
  "doors.validUntil":
    "Diese Seite lässt sich bis {when} öffnen. Wer den Link hat, kann ansehen; ändern kann niemand etwas.",
  "doors.caution":
    "Gerechnet, nicht gemessen: Durchflüsse gelten im Rahmen der Streuung von Pumpen und Formteilen. Elektroarbeit am Wasser gehört in fachkundige Hände.",
};
