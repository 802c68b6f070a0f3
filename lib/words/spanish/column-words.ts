/** What each column holds and how it is written: for those who start a file, and for its description. */

import type { ColumnWords } from '../column-words.ts';

type Explained = readonly (readonly [name: string, holds: string, write: string, example: string])[];

const DAY = 'Un día como AAAA-MM-DD.';
const WHOLE = 'Un número entero.';
const STORAGE =
  'fresh (fresco), room (temperatura ambiente), refrigerated (refrigerado) o frozen (congelado); cualquier otra palabra se conserva como un método propio.';

const CROSSES: Explained = [
  ['cross_id', 'Lo que pone en la etiqueta.', 'Distinto para cada flor de una temporada.', 'T-001'],
  ['pollination_date', 'El día en que se puso el polen en la flor.', DAY, '2026-06-20'],
  [
    'seed_parent',
    'La madre: la planta que lleva la flor.',
    'Cada planta siempre con el mismo nombre.',
    'Lantern Creek',
  ],
  [
    'pollen_parent',
    'El padre: la planta que da el polen.',
    'En blanco solo en los controles sin polinizar.',
    'Salt Moon',
  ],
  ['storage', 'Cómo se guardó el polen hasta usarlo.', STORAGE, 'frozen'],
  [
    'pollen_collected',
    'El día en que se recogió el polen guardado.',
    `${DAY} Hace falta con polen guardado, o bien una de las dos siguientes.`,
    '2025-07-02',
  ],
  [
    'pollen_age_days',
    'La edad del polen guardado cuando se usó.',
    'Días enteros; no hace falta si se conoce su día o su vial.',
    '353',
  ],
  ['vial', 'El vial del que salió el polen guardado.', 'Como está en el archivo de viales.', 'F-01'],
  [
    'outcome',
    'Qué fue de la flor.',
    'fruit (fruto), dropped (cuajó y cayó después), none (sin fruto), unknown (etiqueta perdida) o pending (aún es pronto).',
    'fruit',
  ],
  ['season', 'La temporada, si no es el año de la polinización.', '', '2026'],
  ['grower', 'Quién polinizó.', 'Cada persona siempre con el mismo nombre.', 'Ivo'],
  ['wave', 'Qué oleada de flores de la temporada.', '', '1'],
  ['checked_on', 'El día en que se miró la flor.', DAY, '2026-07-06'],
  ['harvested_on', 'El día en que se cosechó el fruto.', `${DAY} En blanco si no se cosechó.`, '2026-08-15'],
  ['bagged', 'Si la flor se embolsó antes de abrirse.', 'yes (sí) o no.', 'yes'],
  [
    'control',
    'Si la flor es un control y no un cruce.',
    'unpollinated (sin polinizar) o selfed (autopolinizada); en blanco para un cruce.',
    '',
  ],
  ['seeds', 'Cuántas semillas tenía el fruto.', WHOLE, '212'],
  ['sown', 'Cuántas de ellas se sembraron.', WHOLE, '50'],
  ['germinated', 'Cuántas de esas germinaron.', WHOLE, '31'],
  ['fruit_weight_g', 'El peso del fruto en gramos.', 'Un número.', '184.5'],
  ['identified_by', 'Quién identificó las plantas.', '', 'Mara'],
  ['note', 'Cualquier otra cosa.', '', 'se abrió tarde'],
];

const VIALS: Explained = [
  ['vial', 'Lo que pone en el vial.', 'Distinto para cada vial.', 'F-01'],
  [
    'pollen_parent',
    'La planta de la que es su polen.',
    'Con el mismo nombre que en los cruces.',
    'Salt Moon',
  ],
  ['collected', 'El día en que se recogió su polen.', DAY, '2025-07-02'],
  ['storage', 'Cómo se guarda.', STORAGE, 'frozen'],
  ['doses_left', 'Para cuántas flores da todavía.', WHOLE, '4'],
  ['doses_filled', 'Para cuántas flores daba cuando se llenó.', WHOLE, '10'],
  ['thaws', 'Cuántas veces se ha descongelado.', WHOLE, '1'],
  ['note', 'Cualquier otra cosa.', '', ''],
];

const FLOWERS: Explained = [
  [
    'seed_parent',
    'Una planta que florecerá la próxima temporada.',
    'Con el mismo nombre que en los cruces.',
    'Lantern Creek',
  ],
  ['flowers', 'Cuántas flores se esperan en ella.', WHOLE, '6'],
  ['opens_from', 'El primer día en que pueden abrirse.', DAY, '2027-06-10'],
  ['opens_to', 'El último día en que pueden abrirse.', DAY, '2027-07-05'],
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

/** What a column holds and how it is written, as one text. */
export function columnMeaning(name: string, kind: 'crosses' | 'vials' | 'flowers'): string {
  const { holds = '', write = '' } = COLUMN_WORDS[kind].get(name) ?? {};
  return [holds, write].filter((text) => text !== '').join(' ');
}

export const PACKAGE_MEANING =
  'Polinizaciones a mano tal como las entendió fruitodds: una fila por flor, por vial o por planta que va a florecer. Un apóstrofo ' +
  'delante de = + - o @ al principio de una celda solo evita que las hojas de cálculo la ejecuten como fórmula.';
