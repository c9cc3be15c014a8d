import type { findings as english } from "../en/findings.ts";

/** Befunde: {value}, {limit}, {name} und andere Namen in Klammern werden eingesetzt. */
export const findings: Record<keyof typeof english, string> = {
  "findings.solve/not-converged.title": "Keine sichere Antwort",
  "findings.solve/not-converged.sentence":
    "Flüsse und Pegel ließen sich nicht bestimmen ({name}); gezeigt ist der letzte Versuch.",
  "findings.solve/not-converged.fix": "Suchen Sie dort ein Teil mit ungewöhnlichem Maß.",
  "findings.flow/below-wish.title": "Zu wenig Rückförderung",
  "findings.flow/below-wish.sentence": "{value} gehen über den Überlauf; gewünscht sind mindestens {limit}.",
  "findings.flow/below-wish.fix":
    "Drehzahl erhöhen, eine stärkere Pumpe nehmen oder die Leitung leichtgängiger machen.",
  "findings.flow/above-wish.title": "Mehr Rückförderung als gewünscht",
  "findings.flow/above-wish.sentence": "{value} gehen über den Überlauf; gewünscht sind höchstens {limit}.",
  "findings.flow/above-wish.fix": "Drehzahl senken oder eine kleinere Pumpe nehmen.",
  "findings.flow/no-lift.title": "Kein Wasser kommt oben an",
  "findings.flow/no-lift.sentence": "{name} fördert nichts: Erreicht werden {value}, nötig sind {limit}.",
  "findings.flow/no-lift.backward": "Bei {name} läuft Wasser zurück: {value} in die falsche Richtung.",
  "findings.flow/no-lift.fix":
    "Öffnen Sie, was dahinter geschlossen ist, nehmen Sie eine Pumpe mit mehr Förderhöhe, erleichtern Sie die Leitung oder schließen Sie die Abzweige, die das Wasser nehmen.",
  "findings.flow/total-turnover-low.title": "Insgesamt wenig Strömung",
  "findings.flow/total-turnover-low.sentence":
    "Alle Pumpen zusammen wälzen das Schaubecken {value} um; gewünscht sind mindestens {limit}.",
  "findings.flow/total-turnover-low.fix": "Strömungspumpen oder einen geschlossenen Kreislauf ergänzen.",
  "findings.flow/total-turnover-high.title": "Insgesamt viel Strömung",
  "findings.flow/total-turnover-high.sentence":
    "Alle Pumpen zusammen wälzen das Schaubecken {value} um; gewünscht sind höchstens {limit}.",
  "findings.flow/total-turnover-high.fix": "Drehzahl der Strömungspumpen senken.",
  "findings.drain/beyond-quiet.title": "Ablauf reißt Luft mit",
  "findings.drain/beyond-quiet.sentence": "Ablauf „{name}“ führt {value}; leise und belüftet bleibt er bis {limit}.",
  "findings.drain/beyond-quiet.fix":
    "Ein größeres Rohr nehmen oder ihn als gedrosselten Vollsiphon mit belüftetem Ablauf daneben ausführen.",
  "findings.drain/beyond-practice.title": "Ablauf über der Faustregel",
  "findings.drain/beyond-practice.sentence":
    "Ablauf „{name}“ führt {value}; für diese Weite rechnet der Handel mit {limit}.",
  "findings.drain/beyond-practice.fix": "Ein größeres Rohr oder einen zweiten Ablauf nehmen.",
  "findings.drain/beyond-siphon.title": "Ablauf schafft den Fluss nicht",
  "findings.drain/beyond-siphon.sentence": "{name}: {value} kommen an, höchstens {limit} gehen hindurch.",
  "findings.drain/beyond-siphon.fix":
    "Weniger fördern oder einen größeren Ablauf einbauen, bevor die Pumpe eingeschaltet wird.",
  "findings.drain/no-emergency.title": "Kein Notüberlauf",
  "findings.drain/no-emergency.sentence":
    "Ist der beste Ablauf verstopft, führen die übrigen {value}; gefördert werden {limit}.",
  "findings.drain/no-emergency.fix": "Einen trockenen Notüberlauf ergänzen, der allein alles aufnimmt.",
  "findings.drain/emergency-too-small.title": "Notüberlauf zu klein",
  "findings.drain/emergency-too-small.sentence":
    "Ablauf „{name}“ nimmt {value} auf, wenn der Schacht bis zum Rand steht; {limit} können kommen.",
  "findings.drain/emergency-too-small.fix": "Einlauf und Rohr weiten, den Einlauf tiefer setzen oder weniger fördern.",
  "findings.drain/emergency-wet.title": "Notüberlauf ist in Betrieb",
  "findings.drain/emergency-wet.sentence":
    "Ablauf „{name}“ führt im normalen Betrieb {value}; er sollte trocken bleiben.",
  "findings.drain/emergency-wet.fix": "Hauptablauf weiter öffnen oder den Einlauf des Notüberlaufs höher setzen.",
  "findings.drain/siphon-share-unreachable.title": "Siphon schafft seinen Anteil nicht",
  "findings.drain/siphon-share-unreachable.sentence":
    "Ablauf „{name}“ soll {value} führen; ganz geöffnet schafft er {limit}.",
  "findings.drain/siphon-share-unreachable.fix": "Ein größeres Siphonrohr oder einen kleineren Anteil wählen.",
  "findings.drain/siphon-not-clearing-air.title": "Siphon startet vielleicht nicht von selbst",
  "findings.drain/siphon-not-clearing-air.sentence":
    "Ablauf „{name}“ läuft bei Froude-Zahl {value}; erst über etwa {limit} spült das Wasser die Luft aus.",
  "findings.drain/siphon-not-clearing-air.fix":
    "Ein kleineres Siphonrohr nehmen oder zum Start das Ventil öffnen und dann einstellen.",
  "findings.overflow/box-over-rim.title": "Der Ablaufschacht läuft über",
  "findings.overflow/box-over-rim.sentence":
    "Es kommen {value} mehr, als die Abläufe bei vollem Schacht aufnehmen können.",
  "findings.overflow/box-over-rim.fix": "Weniger fördern oder die Abläufe vergrößern.",
  "findings.overflow/display-over-rim.title": "Das Schaubecken läuft über",
  "findings.overflow/display-over-rim.sentence": "Das Wasser stünde {value} über dem Rand des Schaubeckens.",
  "findings.overflow/display-over-rim.fix":
    "Weniger fördern, die Überlaufkante verlängern oder tiefer setzen oder die Abläufe vergrößern.",
  "findings.overflow/little-freeboard.title": "Wenig Platz bis zum Rand",
  "findings.overflow/little-freeboard.sentence": "Bis zum Rand bleiben {value}; üblich sind {limit}.",
  "findings.overflow/little-freeboard.fix": "Überlaufkante tiefer setzen oder verlängern.",
  "findings.overflow/weir-drowned.title": "Überlaufkante eingestaut",
  "findings.overflow/weir-drowned.sentence":
    "Im Schacht steht das Wasser {value} über der Überlaufkante; damit bestimmen die Abläufe den Pegel im Schaubecken.",
  "findings.overflow/weir-drowned.fix": "Einläufe der Abläufe weiten oder tiefer setzen.",
  "findings.overflow/siphon-alone.title": "Ein einziger Siphon hält den Boden trocken",
  "findings.overflow/siphon-alone.sentence":
    "Zieht der Siphon über dem Glas Luft, bleibt alles Geförderte im Schaubecken: Nach {after} läuft es über.",
  "findings.overflow/siphon-alone.dry":
    "Zieht der Siphon über dem Glas Luft, bleibt alles Geförderte im Schaubecken: Nach {after} zieht die Rückförderpumpe Luft, bevor das Becken überläuft.",
  "findings.overflow/siphon-alone.fix":
    "Einen Schwimmerschalter ins Schaubecken setzen, der Rückförderpumpe und Nachfüllung abschaltet, dem Siphon ein zweites Rohr geben und im Schaubecken Platz für alles lassen, was hochgepumpt werden kann. Gebohrtes Glas hat diese Schwäche nicht.",
  "findings.overflow/siphon-runs-dry.title": "Der Siphon zieht bei jedem Stromausfall Luft",
  "findings.overflow/siphon-runs-dry.sentence":
    "Ist alles abgelaufen, stehen die Enden der Rohre {value} über dem Wasser; nach dem Wiederanlauf läuft nichts mehr über.",
  "findings.overflow/siphon-runs-dry.fix":
    "Die Enden der Rohre unter den tiefsten Ablaufeinlauf setzen, oder diesen höher.",
  "findings.overflow/siphon-gathers-air.title": "Im Siphon können sich Blasen sammeln",
  "findings.overflow/siphon-gathers-air.sentence":
    "Die Rohre laufen bei Froude-Zahl {value}; erst über etwa {limit} nimmt das Wasser Blasen mit, darunter sammeln sie sich am Scheitel.",
  "findings.overflow/siphon-gathers-air.fix":
    "Engere oder weniger Rohre nehmen, soweit ihre Verlusthöhe es zulässt, und jede Woche nach Blasen sehen.",
  "findings.overflow/siphon-vacuum.title": "Zu viel Unterdruck am Scheitel des Siphons",
  "findings.overflow/siphon-vacuum.sentence":
    "Am Scheitel fehlen noch {value} Wassersäule, bis das Wasser siedet; {limit} sind das Mindeste. Der Siphon reißt ab.",
  "findings.overflow/siphon-vacuum.fix": "Den Scheitel tiefer legen oder den Pegel im äußeren Schacht heben.",
  "findings.pipe/fast.title": "Schnelles Wasser im Rohr",
  "findings.pipe/fast.sentence": "{value} in {name}; üblich sind bis {limit}.",
  "findings.pipe/fast.fix": "Eine Nennweite größer nehmen.",
  "findings.pipe/slow.title": "Langsames Wasser im Rohr",
  "findings.pipe/slow.sentence": "{value} in {name}; unter {limit} setzt sich Schmutz ab.",
  "findings.pipe/slow.fix": "Ein kleineres Rohr nehmen oder öfter reinigen.",
  "findings.pipe/bulkhead-undersized.title": "Durchführung enger als ihr Rohr",
  "findings.pipe/bulkhead-undersized.sentence": "Die Tankdurchführung ist {value} weit, das Rohr dahinter {limit}.",
  "findings.pipe/bulkhead-undersized.fix": "Eine Durchführung in der Weite des Rohrs einsetzen.",
  "findings.pipe/uncertain-regime.title": "Reibung hier unsicher",
  "findings.pipe/uncertain-regime.sentence":
    "Reynolds-Zahl {value} in {name}: zwischen laminar und turbulent gilt keine veröffentlichte Kurve.",
  "findings.pipe/uncertain-regime.fix": "Rechnen Sie in diesem Rohr mit einem Drittel mehr oder weniger Reibung.",
  "findings.pump/missing.title": "Pumpe nicht im Katalog",
  "findings.pump/missing.sentence":
    "Die Pumpe {name} ({one}) steht nicht im Katalog, vielleicht wurde sie dort gelöscht. Am Entwurf ist sonst nichts verändert; an dieser Stelle wird ohne Pumpe gerechnet.",
  "findings.pump/missing.inDisplay":
    "Die Pumpe {name} (im Schaubecken) steht nicht im Katalog, vielleicht wurde sie dort gelöscht. Am Entwurf ist sonst nichts verändert; an dieser Stelle wird ohne Pumpe gerechnet.",
  "findings.pump/missing.unnamedTitle": "Keine Pumpe gewählt",
  "findings.pump/missing.unnamed": "Dieser Platz für eine Pumpe ist leer: Es wird ohne Pumpe gerechnet.",
  "findings.pump/missing.fix":
    "Wählen Sie für diese Stelle eine andere Pumpe, oder tragen Sie {name} wieder bei den Pumpen des Geschäfts ein.",
  "findings.pump/missing.unnamedFix": "Wählen Sie eine aus der Rangliste.",
  "findings.pump/near-shutoff.title": "Pumpe fördert kaum",
  "findings.pump/near-shutoff.sentence":
    "{name} arbeitet bei {value} ihres größten Förderstroms; unter {limit} wird sie heiß.",
  "findings.pump/near-shutoff.fix": "Eine kleinere Pumpe oder weniger Drehzahl nehmen.",
  "findings.pump/near-runout.title": "Pumpe am Ende ihrer Kennlinie",
  "findings.pump/near-runout.sentence":
    "{name} arbeitet bei {value} ihres größten Förderstroms; über {limit} ist sie laut, und die Daten enden.",
  "findings.pump/near-runout.fix": "Eine größere Pumpe mit weniger Drehzahl nehmen.",
  "findings.pump/beyond-curve.title": "Jenseits des letzten Punkts der Pumpe",
  "findings.pump/beyond-curve.sentence":
    "{name} arbeitet bei {value} des letzten Förderstroms im Datenblatt: Die Kennlinie ist fortgesetzt, nicht bekannt.",
  "findings.pump/beyond-curve.fix": "Ein Ventil etwas schließen oder eine größere Pumpe nehmen.",
  "findings.pump/suction-too-small.title": "Saugleitung enger als die Pumpe",
  "findings.pump/suction-too-small.sentence": "Die Saugleitung ist {value} weit, der Saugstutzen von {name} {limit}.",
  "findings.pump/suction-too-small.fix": "Saugleitung in der Weite des Saugstutzens oder größer ausführen.",
  "findings.pump/not-flooded.title": "Pumpe steht über dem Wasser",
  "findings.pump/not-flooded.sentence":
    "{name} steht {value} über dem Wasser, aus dem sie saugt, und saugt nicht selbst an.",
  "findings.pump/not-flooded.fix": "Unter den Pegel des Technikbeckens stellen.",
  "findings.pump/npsh-low.title": "Wenig Druck am Saugstutzen",
  "findings.pump/npsh-low.sentence": "An {name} sind {value} Haltedruckhöhe vorhanden; üblich sind {limit}.",
  "findings.pump/npsh-low.fix": "Saugleitung kürzer und weiter ausführen.",
  "findings.pump/wrong-place.title": "Pumpe am falschen Ort",
  "findings.pump/wrong-place.sentence": "{name} ist nicht dafür gebaut, {placed} zu stehen.",
  "findings.pump/wrong-place.fix": "Umsetzen oder eine andere Pumpe nehmen.",
  "findings.pump/missing-controller.title": "Steuerung fehlt",
  "findings.pump/missing-controller.sentence":
    "{name} braucht eine Steuerung ({controller}), die einzeln verkauft wird und nicht in diesem Auftrag steht.",
  "findings.pump/missing-controller.fix": "Die Steuerung mitbestellen.",
  "findings.pump/not-controllable.title": "Pumpe hat nur eine Drehzahl",
  "findings.pump/not-controllable.sentence":
    "{name} lässt sich nicht auf {value} stellen: Sie läuft mit voller Drehzahl.",
  "findings.pump/not-controllable.fix": "Eine regelbare Pumpe nehmen oder mit voller Drehzahl rechnen.",
  "findings.pump/below-minimum-speed.title": "Unter der kleinsten Drehzahl",
  "findings.pump/below-minimum-speed.sentence": "{name} steht auf {value}; das Kleinste ist {limit}.",
  "findings.pump/below-minimum-speed.fix": "Drehzahl erhöhen oder eine kleinere Pumpe nehmen.",
  "findings.pump/wrong-voltage.title": "Falsche Netzspannung",
  "findings.pump/wrong-voltage.sentence": "{name} ist für {value} gebaut; das Netz liefert {limit}.",
  "findings.pump/wrong-voltage.fix": "Die Ausführung für dieses Netz nehmen.",
  "findings.pump/no-check-valve.title": "Parallele Pumpen ohne Rückschlagklappe",
  "findings.pump/no-check-valve.sentence":
    "Bleibt eine der Pumpen von {name} stehen, kann Wasser durch sie zurücklaufen.",
  "findings.pump/no-check-valve.fix":
    "Jeder Pumpe eine Rückschlagklappe geben, sich aber nie auf sie allein verlassen.",
  "findings.outlet/jet-fast.title": "Harter Strahl",
  "findings.outlet/jet-fast.sentence": "Das Wasser tritt mit {value} aus; über {limit} zischt es und verletzt Tiere.",
  "findings.outlet/jet-fast.fix": "Eine größere Düse oder einen zweiten Auslauf nehmen.",
  "findings.device/flow-low.title": "Zu wenig Fluss durch ein Gerät",
  "findings.device/flow-low.sentence": "{name} bekommt {value}; der Hersteller verlangt mindestens {limit}.",
  "findings.device/flow-low.backward":
    "Durch {name} läuft Wasser rückwärts, {value}; der Hersteller verlangt mindestens {limit} vorwärts.",
  "findings.device/flow-low.fix": "Sein Ventil öffnen oder die anderen Abzweige etwas schließen.",
  "findings.device/flow-high.title": "Zu viel Fluss durch ein Gerät",
  "findings.device/flow-high.sentence": "{name} bekommt {value}; der Hersteller erlaubt {limit}.",
  "findings.device/flow-high.fix": "Sein Ventil etwas schließen.",
  "findings.sump/over-rim.title": "Eine Kammer des Technikbeckens läuft über",
  "findings.sump/over-rim.sentence":
    "Kammer „{name}“ steht im Betrieb bei {value}; der Rand des Technikbeckens liegt bei {limit}.",
  "findings.sump/over-rim.fix":
    "Trennscheibe dahinter oder Betriebspegel senken oder ein höheres Technikbecken nehmen.",
  "findings.sump/does-not-fit.title": "Das Technikbecken passt nicht unter das Becken",
  "findings.sump/does-not-fit.sentence":
    "Sein Rand liegt {value} über dem Boden des Raums; der Boden des Schaubeckens liegt bei {limit}.",
  "findings.sump/does-not-fit.fix":
    "Ein niedrigeres Technikbecken oder ein höheres Gestell nehmen. Steht das Technikbecken daneben, ist nichts falsch.",
  "findings.sump/too-small.title": "Das Technikbecken läuft bei Stromausfall über",
  "findings.sump/too-small.sentence": "{value} laufen zurück; das Technikbecken hat Platz für {limit}.",
  "findings.sump/too-small.fix":
    "Betriebspegel senken, Belüftungsbohrungen höher setzen oder ein größeres Technikbecken nehmen.",
  "findings.sump/little-room.title": "Wenig Platz im Technikbecken",
  "findings.sump/little-room.sentence": "Nach einem Stromausfall bleiben {value}; üblich sind {limit}.",
  "findings.sump/little-room.fix": "Betriebspegel etwas senken.",
  "findings.sump/return-chamber-low.title": "Wenig Wasser über der Rückförderpumpe",
  "findings.sump/return-chamber-low.sentence":
    "In der Pumpenkammer stehen {value}; unter {limit} zieht eine Pumpe Luft.",
  "findings.sump/return-chamber-low.fix": "Betriebspegel erhöhen.",
  "findings.sump/baffle-drowned.title": "Trennscheibe unter Wasser",
  "findings.sump/baffle-drowned.sentence": "Das Wasser steht bei {value}, über der Trennscheibe von {limit}.",
  "findings.sump/baffle-drowned.fix": "Betriebspegel unter die Trennscheibe senken.",
  "findings.power/circuit-overload.title": "Stromkreis zu stark belastet",
  "findings.power/circuit-overload.sentence":
    "Stromkreis {name} trüge {value}; für Dauerlast ist {limit} die Grenze. Alle Pumpen und Geräte dieses Entwurfs werden zum ersten Stromkreis gezählt.",
  "findings.power/circuit-overload.fix":
    "Die Last auf mehrere Kreise verteilen oder, was woanders hängt, als sonstige Last eines anderen Kreises eintragen.",
  "findings.heat/beyond-chiller.title": "Pumpen heizen mehr, als der Kühler abführt",
  "findings.heat/beyond-chiller.sentence": "Allein die Pumpen bringen {value} ins Wasser; der Kühler führt {limit} ab.",
  "findings.heat/beyond-chiller.fix": "Einen größeren Kühler oder sparsamere Pumpen nehmen.",
  "findings.cost/over-budget.title": "Über dem Budget",
  "findings.cost/over-budget.sentence": "Pumpen und Geräte kosten {value}; das Budget ist {limit}.",
  "findings.cost/over-budget.fix": "Sehen Sie in die Rangliste nach Preis.",
  "findings.cost/mixed-currencies.title": "Zwei Währungen",
  "findings.cost/mixed-currencies.sentence": "Preise in {one} und {other} werden nicht zusammengezählt.",
  "findings.cost/mixed-currencies.fix": "Budget und Strompreis in der Währung des Katalogs angeben.",
  "findings.sound/over-wish.title": "Lauter als gewünscht",
  "findings.sound/over-wish.sentence": "Alle Pumpen zusammen machen {value}; gewünscht sind {limit}.",
  "findings.sound/over-wish.fix": "Größere Pumpen langsamer laufen lassen oder umstellen.",
  "findings.service/no-union.title": "Nichts lässt sich zur Wartung öffnen",
  "findings.service/no-union.sentence": "Kreislauf {name} hat weder Verschraubung noch Ventil.",
  "findings.service/no-union.fix": "Eine Verschraubung an der Pumpe ergänzen.",
  "findings.service/no-valve.title": "Kein Ventil vor der Pumpe",
  "findings.service/no-valve.sentence":
    "Die Saugleitung von {name} hat kein Ventil; die Pumpe lässt sich nur ausbauen, wenn das Technikbecken leer ist.",
  "findings.service/no-valve.fix": "Einen Kugelhahn mit Verschraubungen einsetzen.",
  "findings.overTime/power-cut.title": "Bei Stromausfall wird der Boden nass",
  "findings.overTime/power-cut.sentence": "Ohne Strom läuft nach {after} Wasser über ({place}): {value} auf dem Boden.",
  "findings.overTime/power-cut.dry": "Ohne Strom zieht nach {after} eine Pumpe Luft.",
  "findings.overTime/power-cut.fix":
    "Betriebspegel senken, Belüftungsbohrungen höher setzen oder ein größeres Technikbecken nehmen.",
  "findings.overTime/restart.title": "Beim Wiederanlauf wird der Boden nass",
  "findings.overTime/restart.sentence":
    "Nach einem Stromausfall läuft bei {after} Wasser über ({place}): {value} auf dem Boden, bis die Abläufe nachkommen.",
  "findings.overTime/restart.dry":
    "Nach einem Stromausfall steht die Pumpenkammer bei {after} so tief, dass die Pumpe Luft zieht.",
  "findings.overTime/restart.fix":
    "Den Schacht höher oder den Notüberlauf weiter ausführen; die Pumpe langsam anlaufen lassen; Betriebspegel senken.",
  "findings.overTime/drain-blocked.title": "Ein verstopfter Ablauf macht den Boden nass",
  "findings.overTime/drain-blocked.sentence":
    "Ist „{names}“ verstopft, läuft nach {after} Wasser über ({place}): {value} auf dem Boden.",
  "findings.overTime/drain-blocked.dry":
    "Ist „{names}“ verstopft, füllt sich das Schaubecken, bis die Pumpe nach {after} Luft zieht; der Boden bleibt trocken.",
  "findings.overTime/drain-blocked.fix":
    "Den Notüberlauf vergrößern, bis er den ganzen Fluss aufnimmt, oder weniger fördern.",
  "findings.overTime/two-drains-blocked.title": "Zwei verstopfte Abläufe machen den Boden nass",
  "findings.overTime/two-drains-blocked.sentence":
    "Sind „{names}“ zugleich verstopft, läuft nach {after} Wasser über ({place}): {value} auf dem Boden.",
  "findings.overTime/two-drains-blocked.dry":
    "Sind „{names}“ zugleich verstopft, füllt sich das Schaubecken, bis die Pumpe nach {after} Luft zieht; der Boden bleibt trocken.",
  "findings.overTime/two-drains-blocked.fix":
    "So wenig Wasser in der Pumpenkammer halten, dass das Schaubecken es aufnimmt, oder den letzten Ablauf vergrößern.",
  "findings.overTime/pump-fails.title": "Eine ausgefallene Pumpe macht Ärger",
  "findings.overTime/pump-fails.sentence":
    "Fällt {names} aus, läuft nach {after} Wasser über ({place}): {value} auf dem Boden.",
  "findings.overTime/pump-fails.dry": "Fällt {names} aus, zieht nach {after} eine Pumpe Luft.",
  "findings.overTime/pump-fails.fix":
    "Jeder Pumpe eine Rückschlagklappe geben, und im Technikbecken Platz für das, was ohne sie zurückläuft.",
  "findings.overTime/check-valve-stuck.title": "Nur eine Rückschlagklappe hält den Boden trocken",
  "findings.overTime/check-valve-stuck.sentence":
    "Klemmt die Rückschlagklappe von „{names}“ offen, bringt ein Stromausfall nach {after} {value} auf den Boden.",
  "findings.overTime/check-valve-stuck.dry":
    "Klemmt die Rückschlagklappe von „{names}“ offen, zieht nach {after} eine Pumpe Luft.",
  "findings.overTime/check-valve-stuck.fix":
    "Betriebspegel senken oder Belüftungsbohrungen höher setzen, bis das Technikbecken auch ohne die Klappe alles aufnimmt.",
  "findings.overTime/siphon-break-clogged.title": "Nur die Belüftungsbohrungen halten den Boden trocken",
  "findings.overTime/siphon-break-clogged.sentence":
    "Sind die Belüftungsbohrungen von „{names}“ zugewachsen, bringt ein Stromausfall nach {after} {value} auf den Boden.",
  "findings.overTime/siphon-break-clogged.dry":
    "Sind die Belüftungsbohrungen von „{names}“ zugewachsen, zieht nach {after} eine Pumpe Luft.",
  "findings.overTime/siphon-break-clogged.fix":
    "Die Düsen näher an die Oberfläche setzen oder den Betriebspegel senken.",
  "findings.overTime/overflow-siphon-lost.title": "Ein einziger Siphon hält den Boden trocken",
  "findings.overTime/overflow-siphon-lost.sentence":
    "Mit Luft im Siphon über dem Glas läuft nach {after} das Schaubecken über: {value} auf dem Boden.",
  "findings.overTime/overflow-siphon-lost.dry":
    "Mit Luft im Siphon über dem Glas steigt das Schaubecken, bis nach {after} eine Pumpe Luft zieht; der Boden bleibt trocken, solange niemand Wasser in das Technikbecken nachfüllt.",
  "findings.overTime/overflow-siphon-lost.fix":
    "Einen Schwimmerschalter ins Schaubecken setzen, der Rückförderpumpe und Nachfüllung abschaltet, dem Siphon ein zweites Rohr geben und im Schaubecken Platz für alles lassen, was hochgepumpt werden kann. Gebohrtes Glas hat diese Schwäche nicht.",
  "findings.overTime/top-off-fails.title": "Ohne Nachfüllung läuft die Rückförderpumpe trocken",
  "findings.overTime/top-off-fails.sentence": "Ohne Nachfüllung liegen nach {after} {value} auf dem Boden.",
  "findings.overTime/top-off-fails.dry":
    "Ohne Nachfüllung zieht die Rückförderpumpe nach {after} Luft: So lange muss niemand nachsehen.",
  "findings.overTime/top-off-fails.unattended":
    "Bei vollem Nachfüllbehälter muss {unattended} lang niemand nachsehen. Fällt die Nachfüllung aus, zieht die Rückförderpumpe nach {after} Luft.",
  "findings.overTime/top-off-fails.fix":
    "Pumpenkammer breiter machen, den Einlass tiefer setzen, das Wasser abdecken oder vorher jemanden nachsehen lassen.",
  "findings.overTime/top-off-stuck-open.title": "Eine hängende Nachfüllung macht den Boden nass",
  "findings.overTime/top-off-stuck-open.sentence":
    "Hängt die Nachfüllung offen, läuft nach {after} Wasser über ({place}): {value} auf dem Boden.",
  "findings.overTime/top-off-stuck-open.dry": "Hängt die Nachfüllung offen, zieht nach {after} eine Pumpe Luft.",
  "findings.overTime/top-off-stuck-open.fix":
    "Den Nachfüllbehälter nicht größer wählen als den Platz im Technikbecken, oder einen zweiten Schwimmer zum Abschalten setzen.",
  "findings.overTime/tight.title": "Bei Stromausfall bleibt wenig bis zum Rand",
  "findings.overTime/tight.sentence":
    "{place}: Das Wasser bleibt {value} unter dem Rand stehen; {limit} sind das Mindeste für Wellen und für die Hand, die den Pegel einstellt.",
  "findings.overTime/tight.fix": "Den Betriebspegel um ebenso viel senken.",
  "findings.overTime/running.title": "Es läuft über, obwohl alles arbeitet",
  "findings.overTime/running.sentence":
    "Wie gezeichnet gestartet läuft nach {after} Wasser über ({place}), noch bevor etwas ausfällt.",
  "findings.overTime/running.dry":
    "Wie gezeichnet gestartet zieht nach {after} eine Pumpe Luft, noch bevor etwas ausfällt.",
  "findings.overTime/running.fix":
    "Zuerst beheben, was der laufende Betrieb zeigt; bis dahin sagen die Störfälle wenig.",
  "findings.overTime/unsolved.title": "Ein Störfall ließ sich nicht zu Ende rechnen",
  "findings.overTime/unsolved.sentence": "„{scenario}“ brach vorzeitig ab; gezeigt ist, was erreicht wurde.",
  "findings.overTime/unsolved.fix": "Nach Teilen mit ungewöhnlichen Maßen suchen und diesen Fall mit Wasser prüfen.",
  "findings.caution/leakage-protection.title": "Wasser und Netzstrom",
  "findings.caution/leakage-protection.sentence": "Pumpen, Leuchten und Hände teilen sich dieses Wasser.",
  "findings.caution/leakage-protection.fix":
    "Jeder Stromkreis am Wasser braucht einen Fehlerstromschutz (FI), jedes Kabel eine Tropfschlaufe; örtliche Vorschrift und Elektrofachkraft entscheiden.",
  "findings.caution/check-valve-alone.title": "Rückschlagklappen klemmen",
  "findings.caution/check-valve-alone.sentence": "Eine zugewachsene Rückschlagklappe schließt nicht.",
  "findings.caution/check-valve-alone.fix":
    "Nie allein auf eine Rückschlagklappe verlassen: Im Technikbecken Platz für alles lassen, was zurücklaufen kann.",
  "findings.caution/plug-test.title": "Mit gezogenem Stecker prüfen",
  "findings.caution/plug-test.sentence": "Der Platz im Technikbecken ist nur gerechnet, bis man ihn gesehen hat.",
  "findings.caution/plug-test.fix":
    "Ziehen Sie, bevor Sie gehen, den Stecker und sehen Sie, wo das Wasser stehen bleibt.",
  "findings.caution.glass":
    "Beim Bohren und Heben von Glas verletzt man sich leicht: erst entleeren, dann mit genug Händen und Saughebern heben.",
  "findings.caution.plug": "Ziehen Sie, bevor Sie gehen, den Stecker und sehen Sie, wo das Wasser stehen bleibt.",
  "findings.caution.cement": "PVC-Kleber: lüften, keine Flammen, Handschuhe tragen.",
  "findings.caution.leak":
    "Jeder Stromkreis am Wasser braucht einen Fehlerstromschutz (FI), jedes Kabel eine Tropfschlaufe; örtliche Vorschrift und Elektrofachkraft entscheiden.",
  "findings.caution.strainers": "Ablaufsiebe fangen Schnecken und Blätter: Sehen Sie jede Woche nach.",
  "findings.caution.checkValve": "Nie allein auf eine Rückschlagklappe verlassen: Kalk und Schnecken halten sie offen.",
  "findings.caution.siphonBreak": "Sehen Sie bei jeder Wartung in jede Belüftungsbohrung: Algen schließen sie.",
  "findings.caution.hangOn":
    "Sehen Sie jeden Tag nach den Rohren: Erst kommen Blasen am Scheitel, dann Luft. Prüfen Sie mit gezogenem Stecker, dass der Siphon von selbst wieder läuft.",
  "findings.name.allDrains": "alle Abläufe zusammen",
  "findings.name.levels": "Schaubecken, Schacht und Technikbecken",
  "findings.name.controller": "Steuerung",
  "findings.outlet": "Auslauf ({place})",
  "findings.loop": "Kreislauf {name}",
  "findings.placed.inSump": "im Technikbecken",
  "findings.placed.external": "neben dem Technikbecken",
  "findings.placed.inTank": "im Becken",
};
