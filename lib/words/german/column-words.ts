/** Was jede Spalte enthält und wie sie geschrieben wird. */

import type { ColumnWords } from '../column-words.ts';

type Explained = readonly (readonly [name: string, holds: string, write: string, example: string])[];

const DAY = 'Ein Tag als JJJJ-MM-TT.';
const WHOLE = 'Eine ganze Zahl.';
const STORAGE =
  'fresh, room, refrigerated oder frozen; jedes andere Wort bleibt eine eigene Art der Lagerung.';

const CROSSES: Explained = [
  ['cross_id', 'Was auf dem Etikett steht.', 'Für jede Blüte einer Saison ein anderes.', 'T-001'],
  ['pollination_date', 'Der Tag, an dem der Pollen auf die Blüte kam.', DAY, '2026-06-20'],
  [
    'seed_parent',
    'Die Mutter: die Pflanze, die die Blüte trägt.',
    'Eine Pflanze immer mit demselben Namen.',
    'Lantern Creek',
  ],
  [
    'pollen_parent',
    'Der Vater: die Pflanze, von der der Pollen ist.',
    'Leer nur bei unbestäubten Kontrollen.',
    'Salt Moon',
  ],
  ['storage', 'Wie der Pollen bis zur Verwendung gelagert war.', STORAGE, 'frozen'],
  [
    'pollen_collected',
    'Der Tag, an dem gelagerter Pollen gesammelt wurde.',
    `${DAY} Nötig bei gelagertem Pollen, oder eine der nächsten zwei.`,
    '2025-07-02',
  ],
  [
    'pollen_age_days',
    'Das Alter gelagerten Pollens bei der Verwendung.',
    'Ganze Tage; nicht nötig, wo Tag oder Röhrchen bekannt ist.',
    '353',
  ],
  ['vial', 'Das Röhrchen, aus dem gelagerter Pollen kam.', 'Wie es in der Datei der Röhrchen steht.', 'F-01'],
  [
    'outcome',
    'Was aus der Blüte wurde.',
    'fruit, dropped (angesetzt, dann abgefallen), none, unknown (Etikett verloren) oder pending (zu früh zu sagen).',
    'fruit',
  ],
  ['season', 'Die Saison, wo sie nicht das Jahr der Bestäubung ist.', '', '2026'],
  ['grower', 'Wer bestäubt hat.', 'Eine Person immer mit demselben Namen.', 'Ivo'],
  ['wave', 'Welche Blütenwelle der Saison.', '', '1'],
  ['checked_on', 'Der Tag, an dem die Blüte angesehen wurde.', DAY, '2026-07-06'],
  [
    'harvested_on',
    'Der Tag, an dem die Frucht geerntet wurde.',
    `${DAY} Leer, wo sie nicht geerntet wurde.`,
    '2026-08-15',
  ],
  ['bagged', 'Ob die Blüte eingetütet war, bevor sie sich öffnete.', 'yes oder no.', 'yes'],
  [
    'control',
    'Ob die Blüte eine Kontrolle und keine Kreuzung ist.',
    'unpollinated oder selfed; leer bei einer Kreuzung.',
    '',
  ],
  ['seeds', 'Wie viele Samen die Frucht enthielt.', WHOLE, '212'],
  ['sown', 'Wie viele davon gesät wurden.', WHOLE, '50'],
  ['germinated', 'Wie viele von diesen gekeimt sind.', WHOLE, '31'],
  ['fruit_weight_g', 'Das Gewicht der Frucht in Gramm.', 'Eine Zahl.', '184.5'],
  ['identified_by', 'Wer die Pflanzen benannt hat.', '', 'Mara'],
  ['note', 'Alles Übrige.', '', 'opened late'],
];

const VIALS: Explained = [
  ['vial', 'Was auf dem Röhrchen steht.', 'Für jedes Röhrchen ein anderes.', 'F-01'],
  [
    'pollen_parent',
    'Die Pflanze, von der sein Pollen ist.',
    'Mit demselben Namen wie in den Kreuzungen.',
    'Salt Moon',
  ],
  ['collected', 'Der Tag, an dem sein Pollen gesammelt wurde.', DAY, '2025-07-02'],
  ['storage', 'Wie es gelagert ist.', STORAGE, 'frozen'],
  ['doses_left', 'Für wie viele Blüten es noch reicht.', WHOLE, '4'],
  ['doses_filled', 'Für wie viele Blüten es reichte, als es gefüllt wurde.', WHOLE, '10'],
  ['thaws', 'Wie oft es aufgetaut wurde.', WHOLE, '1'],
  ['note', 'Alles Übrige.', '', ''],
];

const FLOWERS: Explained = [
  [
    'seed_parent',
    'Eine Pflanze, die nächste Saison blühen soll.',
    'Mit demselben Namen wie in den Kreuzungen.',
    'Lantern Creek',
  ],
  ['flowers', 'Wie viele Blüten an ihr erwartet werden.', WHOLE, '6'],
  ['opens_from', 'Der erste Tag, an dem sie sich öffnen können.', DAY, '2027-06-10'],
  ['opens_to', 'Der letzte Tag, an dem sie sich öffnen können.', DAY, '2027-07-05'],
];

function byName(explained: Explained): ReadonlyMap<string, ColumnWords> {
  return new Map(explained.map(([name, holds, write, example]) => [name, { holds, write, example }]));
}

export const COLUMN_WORDS: Readonly<
  Record<'crosses' | 'vials' | 'flowers', ReadonlyMap<string, ColumnWords>>
> = { crosses: byName(CROSSES), vials: byName(VIALS), flowers: byName(FLOWERS) };

export function columnMeaning(name: string, kind: 'crosses' | 'vials' | 'flowers'): string {
  const { holds = '', write = '' } = COLUMN_WORDS[kind].get(name) ?? {};
  return [holds, write].filter((text) => text !== '').join(' ');
}

export const PACKAGE_MEANING =
  'Handbestäubungen, wie fruitodds sie verstanden hat: eine Zeile je Blüte, je Röhrchen oder je Pflanze, die blühen soll. Ein Apostroph ' +
  'vor = + - oder @ am Anfang einer Zelle hindert Tabellen nur daran, sie als Formel zu rechnen.';
