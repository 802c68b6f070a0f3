/** Codes der Auswertung auf Deutsch: warum eine Zahl fehlt, warum eine Zeile nicht zählt. */

const BECAUSE: Readonly<Record<string, string>> = {
  'being-worked-out': 'Es wird noch berechnet.',
  'no-flowers': 'Es gibt keine Blüte, deren Ergebnis bekannt ist.',
  'no-aged-flowers': 'Von keiner Blüte ist das Alter des Pollens bekannt.',
  'no-fresh-flower': 'Keine Blüte mit bekanntem Ergebnis bekam frischen Pollen.',
  'one-outcome': 'Alle Blüten mit bekanntem Ergebnis endeten gleich: alle haben angesetzt oder keine.',
  'terms-separated':
    'Eine Art von Pollen oder ein Alter davon hat immer oder nie angesetzt; das gewöhnliche Modell hat darauf keine Antwort.',
  'spread-without-end':
    'Manche Pflanzen, Paare oder Morgen haben immer angesetzt und die anderen nie; wie sehr sie sich unterscheiden, hat kein Ende.',
  'fewer-than-two-pairs': 'Es gibt weniger als zwei Paare, die sich vergleichen lassen.',
  'zero-count':
    'In den Paaren, die etwas sagen könnten, hat eine Art von Pollen nie oder immer angesetzt; das Verhältnis hat kein Ende.',
  'no-pairs-with-both': 'Kein Paar wurde sowohl mit frischem als auch mit diesem Pollen bestäubt.',
  'no-informative-pairs':
    'In keinem Paar mit beiden Arten von Pollen haben manche Blüten angesetzt und andere nicht; Pollen und Paar lassen sich nicht auseinanderhalten.',
  'too-few-pairs-with-both':
    'Weniger als drei Paare haben beide Arten von Pollen und beide Ergebnisse; Pollen und Paar lassen sich nicht auseinanderhalten.',
  separated:
    'In den Paaren, die etwas sagen könnten, war eine Art von Pollen immer besser; das Verhältnis hat kein Ende.',
  'one-age-or-vial': 'So gelagerter Pollen wurde nur in einem Alter oder nur aus einem Röhrchen erprobt.',
  'past-oldest-age': 'In den erprobten Altern ist der Fruchtansatz nicht auf die Hälfte gefallen.',
  'method-never-tried': 'Keine Blüte mit bekanntem Ergebnis und Alter bekam so gelagerten Pollen.',
  'used-before-collected': 'Der Tag der Verwendung liegt vor dem Tag, an dem der Pollen gesammelt wurde.',
  'no-seed-parent':
    'Für diesen Pollen bleibt keine Mutterpflanze: alle anderen sind die eigene Pflanze oder gelten als unverträglich.',
  'no-pairs-in-both-seasons': 'Kein Paar bekam in beiden Saisons dieselbe Art von Pollen.',
  'too-few-pairs-in-both-seasons':
    'Weniger als drei Paare bekamen in beiden Saisons dieselbe Art von Pollen mit beiden Ergebnissen; Saison und Paar lassen sich nicht auseinanderhalten.',
  'no-storage-in-both-directions': 'Die beiden Richtungen hatten keine Art von Pollen gemeinsam.',
  'no-variation': 'Alle Blüten jeder Art endeten gleich; es gibt keine Spanne.',
  'no-strata': 'Es gibt nichts, worin sich vergleichen ließe.',
  'no-failure': 'Keine Blüte blieb ohne Ansatz; das Verhältnis hat keine Spanne.',
  'background-always-took': 'Jede Kontrollblüte hat angesetzt; für die Kreuzungen bleibt nichts zu zeigen.',
  unbounded: 'Bei so wenigen Kontrollblüten ist dieses Ende der Spanne offen.',
  'no-fresh-cross':
    'Keine Blüte derselben Pflanzen mit bekanntem Ergebnis wurde mit frischem Pollen gekreuzt.',
  'selfed-never-took': 'Bisher hat keine selbstbestäubte Blüte angesetzt; das Verhältnis hat keine Spanne.',
  'crosses-never-took':
    'Keine Kreuzung derselben Pflanzen hat angesetzt; es fehlt, womit zu vergleichen wäre.',
  'pollen-took-elsewhere': 'Derselbe Pollen hat auf anderen Pflanzen angesetzt.',
  'pollen-failed-elsewhere':
    'Derselbe Pollen hat auf keiner anderen Pflanze angesetzt, auf der er erprobt wurde.',
  'pollen-not-tried-elsewhere': 'Derselbe Pollen wurde auf keiner anderen Pflanze erprobt.',
  'no-seed-counts': 'Von keiner Frucht wurden die Samen gezählt.',
  'too-few-fruits':
    'Nur von einer Frucht wurden die Samen gezählt; wie sehr sich Früchte unterscheiden, ist nicht bekannt.',
  'no-seeds': 'Die gezählten Früchte enthielten keine Samen.',
  'no-germination-counts': 'Keine Aussaat hat beide Zahlen, gesät und gekeimt.',
  'too-few-lots': 'Nur eine Aussaat wurde gezählt; wie sehr sich Aussaaten unterscheiden, ist nicht bekannt.',
  'lots-all-alike': 'Alle gesäten Samen endeten gleich: alle sind gekeimt oder keiner.',
  'zero-part': 'Ein Teil des Produkts ist bisher null; es gibt keine Spanne.',
  'no-worth': 'Es ist nicht gesagt, welcher Fruchtansatz eine Blüte wert ist.',
  'no-average-pair':
    'Es gibt keine zwei Paare mit einer Schätzung, also keinen Durchschnitt zum Vergleichen.',
  'no-model': 'Es gibt kein Modell dieser Saison, aus dem sich das berechnen ließe.',
  'no-flowers-file': 'Es wurde keine Datei mit den nächste Saison erwarteten Blüten angegeben.',
  'no-expected-flowers': 'Nächste Saison wird keine Blüte erwartet: jede Zeile der Blütendatei sagt 0.',
  'no-pollen-for-flowers':
    'Für die erwarteten Blüten ist kein Pollen da: kein Röhrchen mit einer Dosis, und keine zwei kreuzbaren Pflanzen blühen am selben Morgen.',
  'no-doses-left': 'Es ist keine Dosis mehr darin.',
  'mother-not-in-flower': 'Die Blütendatei erwartet auf dieser Mutterpflanze keine Blüte.',
  'own-pollen': 'Mit dem eigenen Pollen einer Pflanze wird nicht geplant.',
  'named-incompatible': 'Das Paar gilt als unverträglich.',
  'no-common-morning':
    'Die beiden Pflanzen blühen nie am selben Morgen, und kein Röhrchen enthält diesen Pollen.',
  'no-pollen-of-father':
    'Von dieser Pflanze gibt es keinen Pollen: es wird keine Blüte erwartet, und kein Röhrchen ist brauchbar.',
  'fewer-flowers-expected':
    'Auf der Mutterpflanze werden weniger Blüten erwartet als gewünscht: höchstens so viele wünschen, oder ihre Zahl in der Blütendatei erhöhen.',
  'too-little-pollen':
    'Der Pollen, der übrig ist oder sich am selben Morgen öffnet, reicht für weniger Blüten: höchstens so viele wünschen, oder die Dosen in der Röhrchendatei berichtigen.',
  'other-wish-in-the-way': 'Ein anderer Wunsch oder eine Obergrenze steht im Weg: eines davon senken.',
  'not-settled': 'Die Rechnung kam zu keinem Ergebnis.',
  'model-not-settled': 'Die Rechnung kam zu keinem Ergebnis.',
};

const LEFT_OUT: Readonly<Record<string, string>> = {
  'outcome-unknown': 'Das Etikett ging verloren, oder die Blüte wurde nicht wiedergesehen.',
  'outcome-pending': 'Es ist zu früh zu sagen, was aus der Blüte wird.',
  'cell-blank': 'Eine nötige Zelle ist leer.',
  'row-ragged': 'Die Zeile hat mehr oder weniger Zellen als die Kopfzeile.',
  'header-repeated': 'Die Zeile wiederholt die Kopfzeile.',
  'quote-not-closed': 'Ein Anführungszeichen ist nicht geschlossen.',
  'control-character': 'Die Zeile enthält ein Zeichen, das in keinem Text steht.',
  'date-does-not-exist': 'Ein Datum gibt es nicht.',
  'date-not-understood': 'Ein Datum ist nicht lesbar.',
  'date-serial': 'Ein Datum ist die eigene Tageszahl einer Tabellenkalkulation.',
  'date-implausible': 'Ein Datum liegt zu weit zurück oder voraus.',
  'number-not-understood': 'Eine Zahl ist nicht lesbar.',
  'number-negative': 'Eine Zahl ist negativ.',
  'number-absurd': 'Eine Zahl ist viel zu groß.',
  'word-not-understood': 'Ein Wort ist keines von denen, die dort stehen können.',
  'tag-repeated': 'Die Zeile steht zweimal da.',
  'tag-conflict': 'Das Etikett hängt auch an einer anderen Blüte.',
  'future-date': 'Die Blüte wurde nach dem letzten Tag der Dateien bestäubt.',
  'selfed-with-other-pollen': 'Sie heißt selbstbestäubt, hat aber den Pollen einer anderen Pflanze.',
  'file-repeated': 'Die ganze Datei wurde zweimal angegeben.',
  'column-missing': 'In der Datei fehlt eine nötige Spalte.',
  'column-unclear': 'Zwei Spalten der Datei könnten dasselbe bedeuten.',
  'date-order-unclear': 'Die Daten der Datei lassen sich auf zwei Weisen lesen.',
  'date-order-mixed': 'Die Daten der Datei sind in zwei Reihenfolgen geschrieben.',
  'table-sideways': 'Die Spaltenköpfe der Datei stehen in einer Spalte.',
  'parents-in-one': 'Eine Spalte enthält beide Eltern.',
  'total-row': 'Die Zeile ist eine Summe, kein Eintrag.',
  'row-nearly-blank': 'Die Zeile enthält nichts von dem, was nötig ist.',
  'nothing-entered': 'In der Datei ist noch keine Blüte eingetragen.',
  'other-format': 'Die Datei ist keine Tabelle.',
  'kind-unknown': 'Die Spalten der Datei sind keine, die wir kennen.',
  'kind-differs': 'Die Datei wurde als eine andere Art angegeben, als ihre Spalten sagen.',
};

const SENTENCES: ReadonlyMap<string, string> = new Map(
  [BECAUSE, LEFT_OUT].flatMap((codes) => Object.entries(codes)),
);

export function reasonSentence(code: string): string {
  return SENTENCES.get(code) ?? `Das sagen die Daten nicht (${code}).`;
}
