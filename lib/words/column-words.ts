/** What each column holds and how it is written, in English: for those who start a file, and for its description. */

/** A column explained. */
export interface ColumnWords {
  /** What it holds. */
  readonly holds: string;
  /** How a cell is written; empty where that goes without saying. */
  readonly write: string;
  readonly example: string;
}

type Explained = readonly (readonly [name: string, holds: string, write: string, example: string])[];

const DAY = 'A day as YYYY-MM-DD.';
const WHOLE = 'A whole number.';
const STORAGE = 'fresh, room, refrigerated or frozen; any other word is kept as a method of its own.';

const CROSSES: Explained = [
  ['cross_id', 'What stands on the tag.', 'Another one for each flower of a season.', 'T-001'],
  ['pollination_date', 'The day on which the pollen was put on the flower.', DAY, '2026-06-20'],
  [
    'seed_parent',
    'The mother: the plant that bears the flower.',
    'One plant always by the same name.',
    'Lantern Creek',
  ],
  [
    'pollen_parent',
    'The father: the plant that the pollen is from.',
    'Blank for unpollinated controls only.',
    'Salt Moon',
  ],
  ['storage', 'How the pollen was kept until it was used.', STORAGE, 'frozen'],
  [
    'pollen_collected',
    'The day on which stored pollen was collected.',
    `${DAY} Needed for stored pollen, or one of the next two.`,
    '2025-07-02',
  ],
  [
    'pollen_age_days',
    'The age of stored pollen when it was used.',
    'Whole days; not needed where its day or its vial is known.',
    '353',
  ],
  ['vial', 'The vial that stored pollen came from.', 'As it stands in the file of vials.', 'F-01'],
  [
    'outcome',
    'What became of the flower.',
    'fruit, dropped (set, then fell), none, unknown (tag lost) or pending (too early to say).',
    'fruit',
  ],
  ['season', 'The season, where it is not the year of the pollination.', '', '2026'],
  ['grower', 'Who pollinated.', 'One person always by the same name.', 'Ivo'],
  ['wave', 'Which wave of flowers of the season.', '', '1'],
  ['checked_on', 'The day on which the flower was looked at.', DAY, '2026-07-06'],
  [
    'harvested_on',
    'The day on which the fruit was harvested.',
    `${DAY} Blank where it was not.`,
    '2026-08-15',
  ],
  ['bagged', 'Whether the flower was bagged before it opened.', 'yes or no.', 'yes'],
  [
    'control',
    'Whether the flower is a control and no cross.',
    'unpollinated or selfed; blank for a cross.',
    '',
  ],
  ['seeds', 'How many seeds the fruit held.', WHOLE, '212'],
  ['sown', 'How many of them were sown.', WHOLE, '50'],
  ['germinated', 'How many of those germinated.', WHOLE, '31'],
  ['fruit_weight_g', 'The weight of the fruit in grams.', 'A number.', '184.5'],
  ['identified_by', 'Who named the plants.', '', 'Mara'],
  ['note', 'Anything else.', '', 'opened late'],
];

const VIALS: Explained = [
  ['vial', 'What stands on the vial.', 'Another one for each vial.', 'F-01'],
  ['pollen_parent', 'The plant that its pollen is from.', 'By the same name as in the crosses.', 'Salt Moon'],
  ['collected', 'The day on which its pollen was collected.', DAY, '2025-07-02'],
  ['storage', 'How it is kept.', STORAGE, 'frozen'],
  ['doses_left', 'How many flowers it can still serve.', WHOLE, '4'],
  ['doses_filled', 'How many flowers it could serve when it was filled.', WHOLE, '10'],
  ['thaws', 'How often it was thawed.', WHOLE, '1'],
  ['note', 'Anything else.', '', ''],
];

const FLOWERS: Explained = [
  [
    'seed_parent',
    'A plant that is to flower next season.',
    'By the same name as in the crosses.',
    'Lantern Creek',
  ],
  ['flowers', 'How many flowers are expected on it.', WHOLE, '6'],
  ['opens_from', 'The first day on which they may open.', DAY, '2027-06-10'],
  ['opens_to', 'The last day on which they may open.', DAY, '2027-07-05'],
];

function byName(explained: Explained): ReadonlyMap<string, ColumnWords> {
  return new Map(explained.map(([name, holds, write, example]) => [name, { holds, write, example }]));
}

/** Every column of every kind of file, explained. */
export const COLUMN_WORDS: Readonly<
  Record<'crosses' | 'vials' | 'flowers', ReadonlyMap<string, ColumnWords>>
> = {
  crosses: byName(CROSSES),
  vials: byName(VIALS),
  flowers: byName(FLOWERS),
};

/** What a column holds and how it is written, as one text. */
export function columnMeaning(name: string, kind: 'crosses' | 'vials' | 'flowers'): string {
  const { holds = '', write = '' } = COLUMN_WORDS[kind].get(name) ?? {};
  return [holds, write].filter((text) => text !== '').join(' ');
}

/** What a package of cleaned files is, for its description. */
export const PACKAGE_MEANING =
  'Hand pollinations as fruitodds understood them: one row a flower, a vial, or a plant that is to flower. An apostrophe ' +
  'before = + - or @ at the start of a cell only keeps spreadsheets from running it as a formula.';
