/** Das Verzeichnis dessen, was an einer Zeile nicht stimmen kann. */

import type { RowProblemCode } from '../../season/problems.ts';
import type { EntryParts } from '../catalogue-entry.ts';
import { CELL_ENTRIES } from './catalogue-cells.ts';
import { LEFT_OUT, USED, WITHOUT_CELL } from './catalogue-files.ts';

const ONE_OF_TWO = 'Eines von beiden berichtigen.';
const NEITHER = 'Keine der Zeilen wird verwendet, denn nichts sagt, welche stimmt.';
const FIRST = 'Die erste Zeile wird verwendet, diese ausgelassen.';
const DELETE_ONE = 'Eine der beiden Zeilen löschen.';
const TWICE = 'eine zweimal eingefügte Zeile';
const NOT_CROSS = 'control leer lassen, wenn es eine Kreuzung war, sonst';

export const ROW_ENTRIES: Readonly<Record<RowProblemCode, EntryParts>> = {
  ...CELL_ENTRIES,
  'tag-repeated': [
    'error',
    'Dasselbe Etikett steht zweimal da, mit demselben Inhalt.',
    FIRST,
    DELETE_ONE,
    TWICE,
  ],
  'tag-conflict': [
    'error',
    'Dasselbe Etikett steht zweimal da, mit verschiedenem Inhalt.',
    NEITHER,
    'Das Etikett der einen berichtigen, oder die falsche Zeile löschen.',
    'T-12 mit fruit und T-12 mit none',
  ],
  'vial-repeated': [
    'error',
    'Dasselbe Röhrchen steht zweimal da, mit demselben Inhalt.',
    FIRST,
    DELETE_ONE,
    TWICE,
  ],
  'vial-conflict': [
    'error',
    'Dasselbe Röhrchen steht zweimal da, mit verschiedenem Inhalt.',
    NEITHER,
    'Einem davon einen eigenen Namen geben, oder die falsche Zeile löschen.',
    'F-01 von zwei Pflanzen',
  ],
  'flowers-repeated': [
    'warning',
    'Dieselbe Pflanze soll zweimal an denselben Tagen blühen.',
    'Beide Zeilen werden verwendet.',
    'Eine löschen, wenn sie dieselben Blüten meinen.',
    TWICE,
  ],
  'future-date': [
    'error or warning',
    'Ein Datum liegt nach dem Tag, bis zu dem gelesen wird (--as-of).',
    'Bei einer Bestäubung, oder beim Sammeln in der Röhrchendatei, wird die Zeile ausgelassen; einer Ernte wird nicht geglaubt.',
    'Das Datum berichtigen, oder ein späteres --as-of angeben.',
    '2052-06-20',
  ],
  'outcome-after-as-of': [
    'warning',
    'Das Ergebnis wurde nach dem Tag gesehen, bis zu dem gelesen wird (--as-of).',
    'Die Zeile zählt als pending.',
    'Das Datum berichtigen, oder ein späteres --as-of angeben.',
    'kontrolliert 2026-08-01, gelesen bis 2026-07-01',
  ],
  'collected-after-pollination': [
    'warning',
    'Der Pollen wurde nach seiner Verwendung gesammelt.',
    `${USED} Seinem Sammeldatum wird nicht geglaubt.`,
    ONE_OF_TWO,
    'gesammelt 2025-06-20, verwendet 2025-06-01',
  ],
  'fresh-collected-earlier': [
    'warning',
    'Der Pollen heißt frisch, wurde aber Tage vorher gesammelt.',
    `${USED} Frischer Pollen hat das Alter 0.`,
    'Das Datum berichtigen, oder sagen, wie der Pollen gelagert war.',
    'frisch, zehn Tage vorher gesammelt',
  ],
  'age-missing': [
    'warning',
    'Gelagerter Pollen hat weder Datum noch Alter noch ein Röhrchen mit bekanntem Datum.',
    'Die Zeile zählt in einfachen Raten, nicht, wo das Alter zählt.',
    'pollen_collected, pollen_age_days oder vial ausfüllen; auch die Datei der Röhrchen angeben.',
    'frozen, und sonst nichts',
  ],
  'age-disagrees': [
    'warning',
    'Nach zwei Quellen ist der Pollen verschieden alt.',
    `${USED} Das Sammeldatum geht den angegebenen Tagen vor, diese dem Röhrchen.`,
    ONE_OF_TWO,
    'gesammelt 31 Tage vorher, pollen_age_days 12',
  ],
  'age-over-ten-years': [
    'warning',
    'Der Pollen war mehr als zehn Jahre alt.',
    USED,
    'Das Jahr prüfen, in dem er gesammelt wurde.',
    'gesammelt 2005-03-01, verwendet 2025-06-01',
  ],
  'vial-unknown': [
    'warning',
    'Das Röhrchen steht nicht in der Datei der Röhrchen.',
    USED,
    'Dort ergänzen, oder hier seinen Namen berichtigen.',
    'F-99',
  ],
  'vial-before-collected': [
    'warning',
    'Das Röhrchen wurde verwendet, bevor sein Pollen gesammelt wurde.',
    `${USED} Dem Alter aus dem Röhrchen wird nicht geglaubt.`,
    'Das Röhrchen oder eines der Daten berichtigen.',
    'verwendet im Juni, gesammelt im Juli',
  ],
  'vial-beyond-doses': [
    'warning',
    'Mehr Blüten nennen das Röhrchen, als es gefüllt wurde.',
    USED,
    'Das Röhrchen einiger Blüten berichtigen, oder doses_filled in der Datei der Röhrchen.',
    '7 Blüten eines Röhrchens mit 5 Dosen',
  ],
  'vial-father-differs': [
    'warning',
    'Das Röhrchen enthält den Pollen einer anderen Pflanze, als die Zeile sagt.',
    `${USED} Geglaubt wird der Zeile.`,
    ONE_OF_TWO,
    'Salt Moon aus einem Röhrchen von Owl Hour',
  ],
  'vial-storage-differs': [
    'warning',
    'Das Röhrchen ist anders gelagert, als die Zeile sagt.',
    `${USED} Geglaubt wird der Zeile.`,
    ONE_OF_TWO,
    'refrigerated aus einem gefrorenen Röhrchen',
  ],
  'year-stands-alone': [
    'warning',
    'Ein Datum der Bestäubung, des Sammelns oder der Blüte liegt mehr als fünf Jahre vor oder nach allen anderen.',
    `${USED} Eine zu späte Bestäubung verschiebt auch den Tag, für den zu Röhrchen geraten wird.`,
    'Das Jahr berichtigen, wenn es ein Tippfehler ist.',
    '2052-06-20 unter Blüten von 2025',
  ],
  'own-pollen': [
    'warning',
    'Eine Pflanze wurde mit eigenem Pollen bestäubt, und die Zeile ist nicht als Kontrolle bezeichnet.',
    'Die Zeile zählt als Kreuzung.',
    'In die Spalte control selfed schreiben, wenn es eine war.',
    'Owl Hour × Owl Hour',
  ],
  'selfed-with-other-pollen': [
    'error',
    'Die Kontrolle heißt selfed, hat aber den Pollen einer anderen Pflanze.',
    LEFT_OUT,
    `${NOT_CROSS} den Pollenspender berichtigen.`,
    'selfed, Owl Hour × Salt Moon',
  ],
  'unpollinated-with-pollen': [
    'warning',
    'Eine unbestäubte Kontrolle hat Pollenspender, Lagerung, Alter oder Röhrchen.',
    `${USED} Was sie über Pollen sagt, wird nicht geglaubt.`,
    `${NOT_CROSS} die Zelle leeren.`,
    'unpollinated, frozen',
  ],
  'checked-before-pollination': [
    'warning',
    'Die Blüte wurde vor ihrer Bestäubung angesehen.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    'kontrolliert 2025-05-16, bestäubt 2025-06-01',
  ],
  'checked-too-early': [
    'warning',
    'Eine Frucht wurde vermerkt, bevor sie von einer welkenden Blüte zu unterscheiden ist.',
    USED,
    'Die Daten prüfen, oder pending schreiben.',
    'eine Frucht nach zwei Tagen',
  ],
  'checked-too-late': [
    'warning',
    'Die Blüte wurde mehr als ein Jahr nach ihrer Bestäubung angesehen.',
    WITHOUT_CELL,
    'Die Jahre beider Daten prüfen.',
    'kontrolliert 2052-06-15, bestäubt 2025-06-01',
  ],
  'harvested-before-pollination': [
    'warning',
    'Die Frucht wurde vor der Bestäubung ihrer Blüte geerntet.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    'geerntet 2025-05-16, bestäubt 2025-06-01',
  ],
  'harvested-too-late': [
    'warning',
    'Die Frucht wurde mehr als zwei Jahre nach der Bestäubung ihrer Blüte geerntet.',
    WITHOUT_CELL,
    'Die Jahre beider Daten prüfen.',
    'geerntet 2052-08-16, bestäubt 2025-06-01',
  ],
  'harvested-without-fruit': [
    'warning',
    'Eine Ernte ist vermerkt bei einer Blüte ohne Frucht.',
    `${USED} Geglaubt wird dem Ergebnis.`,
    'Als Ergebnis fruit schreiben, oder das Erntedatum leeren.',
    'none, geerntet 2025-08-16',
  ],
  'seeds-without-fruit': [
    'warning',
    'Samen sind vermerkt bei einer Blüte ohne Frucht.',
    `${USED} Geglaubt wird dem Ergebnis.`,
    'Als Ergebnis fruit schreiben, oder die Samen leeren.',
    'none, 40 Samen',
  ],
  'more-sown-than-seeds': [
    'warning',
    'Mehr Samen wurden gesät, als die Frucht enthielt.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    '300 gesät von 212',
  ],
  'more-germinated-than-sown': [
    'warning',
    'Mehr Samen keimten, als gesät wurden.',
    WITHOUT_CELL,
    ONE_OF_TWO,
    '30 gekeimt von 20',
  ],
  'opens-backwards': [
    'warning',
    'Die Blüte soll enden, bevor sie beginnt.',
    `${USED} Keinem der Daten wird geglaubt.`,
    ONE_OF_TWO,
    'von 2026-06-01 bis 2026-05-01',
  ],
};
