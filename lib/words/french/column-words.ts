/** What each column of a season's files holds, as a template explains it. */
import type { ColumnWords } from '../column-words.ts';

type Explained = readonly (readonly [name: string, holds: string, write: string, example: string])[];

const DAY = 'Un jour, AAAA-MM-JJ.';
const WHOLE = 'Un nombre entier.';
const STORAGE = 'fresh, room, refrigerated ou frozen ; tout autre mot est gardé comme une méthode à part.';
const SAME_NAME = 'Par le même nom que dans les croisements.';

const CROSSES: Explained = [
  ['cross_id', 'Ce qui est sur l’étiquette.', 'Une autre pour chaque fleur d’une saison.', 'T-001'],
  ['pollination_date', 'Le jour où le pollen a été mis sur la fleur.', DAY, '2026-06-20'],
  [
    'seed_parent',
    'La mère : la plante qui porte la fleur.',
    'Une plante toujours par le même nom.',
    'Lantern Creek',
  ],
  [
    'pollen_parent',
    'Le père : la plante d’où vient le pollen.',
    'Vide seulement pour les témoins sans pollen.',
    'Salt Moon',
  ],
  ['storage', 'Comment le pollen a été gardé jusqu’à servir.', STORAGE, 'frozen'],
  [
    'pollen_collected',
    'Le jour où le pollen stocké a été récolté.',
    `${DAY} Nécessaire pour du pollen stocké, ou l’une des deux suivantes.`,
    '2025-07-02',
  ],
  [
    'pollen_age_days',
    'L’âge du pollen stocké quand il a servi.',
    'En jours entiers ; inutile là où son jour ou son tube est connu.',
    '353',
  ],
  ['vial', 'Le tube d’où vient le pollen stocké.', 'Comme il est dans le fichier des tubes.', 'F-01'],
  [
    'outcome',
    'Ce que la fleur est devenue.',
    'fruit, dropped (formé, puis tombé), none, unknown (étiquette perdue) ou pending (trop tôt pour le dire).',
    'fruit',
  ],
  ['season', 'La saison, si ce n’est pas l’année de la pollinisation.', '', '2026'],
  ['grower', 'Qui a pollinisé.', 'Une personne toujours par le même nom.', 'Ivo'],
  ['wave', 'Quelle vague de fleurs de la saison.', '', '1'],
  ['checked_on', 'Le jour où la fleur a été regardée.', DAY, '2026-07-06'],
  ['harvested_on', 'Le jour où le fruit a été récolté.', `${DAY} Vide s’il ne l’a pas été.`, '2026-08-15'],
  ['bagged', 'Si la fleur a été mise sous sachet avant de s’ouvrir.', 'yes ou no.', 'yes'],
  [
    'control',
    'Si la fleur est un témoin et non un croisement.',
    'unpollinated ou selfed ; vide pour un croisement.',
    '',
  ],
  ['seeds', 'Combien de graines le fruit avait.', WHOLE, '212'],
  ['sown', 'Combien d’entre elles ont été semées.', WHOLE, '50'],
  ['germinated', 'Combien de celles-là ont germé.', WHOLE, '31'],
  ['fruit_weight_g', 'Le poids du fruit en grammes.', 'Un nombre.', '184.5'],
  ['identified_by', 'Qui a nommé les plantes.', '', 'Mara'],
  ['note', 'Toute autre chose.', '', 'ouverte tard'],
];

const VIALS: Explained = [
  ['vial', 'Ce qui est sur le tube.', 'Un autre pour chaque tube.', 'F-01'],
  ['pollen_parent', 'La plante d’où vient son pollen.', SAME_NAME, 'Salt Moon'],
  ['collected', 'Le jour où son pollen a été récolté.', DAY, '2025-07-02'],
  ['storage', 'Comment il est gardé.', STORAGE, 'frozen'],
  ['doses_left', 'Combien de fleurs il peut encore servir.', WHOLE, '4'],
  ['doses_filled', 'Combien de fleurs il pouvait servir une fois rempli.', WHOLE, '10'],
  ['thaws', 'Combien de fois il a été décongelé.', WHOLE, '1'],
  ['note', 'Toute autre chose.', '', ''],
];

const FLOWERS: Explained = [
  ['seed_parent', 'Une plante qui doit fleurir la saison prochaine.', SAME_NAME, 'Lantern Creek'],
  ['flowers', 'Combien de fleurs y sont attendues.', WHOLE, '6'],
  ['opens_from', 'Le premier jour où elles peuvent s’ouvrir.', DAY, '2027-06-10'],
  ['opens_to', 'Le dernier jour où elles peuvent s’ouvrir.', DAY, '2027-07-05'],
];

function byName(explained: Explained): ReadonlyMap<string, ColumnWords> {
  return new Map(explained.map(([name, holds, write, example]) => [name, { holds, write, example }]));
}

export const COLUMN_WORDS: Readonly<
  Record<'crosses' | 'vials' | 'flowers', ReadonlyMap<string, ColumnWords>>
> = {
  crosses: byName(CROSSES),
  vials: byName(VIALS),
  flowers: byName(FLOWERS),
};

/** What a column holds and how to write it. */
export function columnMeaning(name: string, kind: 'crosses' | 'vials' | 'flowers'): string {
  const { holds = '', write = '' } = COLUMN_WORDS[kind].get(name) ?? {};
  return [holds, write].filter((text) => text !== '').join(' ');
}

export const PACKAGE_MEANING =
  'Pollinisations à la main, comme fruitodds les a comprises : une ligne par fleur, par tube, ou par plante qui doit fleurir. Une ' +
  'apostrophe devant = + - ou @ au début d’une case empêche seulement les tableurs de l’exécuter comme une formule.';
