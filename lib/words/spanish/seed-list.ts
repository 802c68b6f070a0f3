/** The seed list: what each ripe cross has given, and what must be known before seed is sent. */

import type { SeedList, SeedListEntry } from '../../analysis/seed-list.ts';
import type { Germination } from '../../analysis/seeds.ts';
import type { SeedGroup } from '../told/seeds.ts';
import { seedTotals } from '../told/seeds.ts';
import { pairName } from './choice-figures.ts';
import { crossesIn, fruitsIn, seedsIn } from './nouns.ts';
import { counted, counts, rateWithRange, wholeNumber } from './numbers.ts';

export function seedListAnswer(list: SeedList): string {
  if (list.entries.length === 0)
    return 'No consta ningún fruto maduro de un cruce, así que no hay semilla que ofrecer.';
  const { crosses, fruits, countedFruits, seeds, unsown } = seedTotals(list);
  const start = `${crossesIn(crosses)} ${crosses === 1 ? 'ha' : 'han'} dado ${counted(fruits, 'fruto maduro', 'frutos maduros')}`;
  if (countedFruits === 0) return `${start}; no se contaron las semillas de ninguno.`;
  const held = `se contaron las semillas de ${counts(countedFruits, fruits)}, que tenían ${seedsIn(seeds)}`;
  return `${start}; ${held}, de las que ${unsown === 1 ? 'quedó' : 'quedaron'} sin sembrar ${wholeNumber(unsown)}.`;
}

/** What a seed parent has given. */
export function seedParentSaid(group: SeedGroup): string {
  const { crosses, fruits, seeds, countedFruits } = seedTotals(group);
  const held =
    countedFruits === 0 ? 'semillas sin contar' : counted(seeds, 'semilla contada', 'semillas contadas');
  const given = counted(fruits, 'fruto maduro', 'frutos maduros');
  return `${group.seedParent}: ${crossesIn(crosses)}, ${given}, ${held}`;
}

export const NO_NOTE = 'ninguna';

export const SEED_LIST_COLUMNS = [
  'planta madre × padre',
  'temporada',
  'frutos maduros',
  'semillas contadas',
  'de ellas sin sembrar',
  'germinadas de las sembradas',
  'nota',
] as const;

export function seedListRows({ entries }: Pick<SeedList, 'entries'>): readonly (readonly string[])[] {
  return entries.map((entry) => [
    pairName(entry),
    entry.season,
    wholeNumber(entry.fruits),
    entry.countedFruits === 0 ? 'sin contar' : wholeNumber(entry.seeds),
    entry.countedFruits === 0 ? 'no se sabe' : wholeNumber(entry.unsown),
    germinatedSaid(entry.germination),
    noteOf(entry),
  ]);
}

/** Counts alone where none or all germinated. */
function germinatedSaid({ germinated, sown, ...range }: Germination): string {
  if (sown === 0) return 'sin contar';
  if (germinated === 0 || germinated === sown) return counts(germinated, sown);
  return rateWithRange({ fruits: germinated, flowers: sown, ...range });
}

function noteOf({ fruits, countedFruits, bagNotSaid, seedParent, pollenParent }: SeedListEntry): string {
  const open = fruits - countedFruits;
  const of = (some: number) => (fruits === 1 ? 'este fruto' : `${counts(some, fruits)} frutos`);
  const notes = [
    ...(seedParent === pollenParent ? ['autopolinizada'] : []),
    ...(countedFruits > 0 && open > 0 ? [`semillas de ${of(open)} sin contar`] : []),
    ...(bagNotSaid > 0 ? [`no consta la bolsa de ${of(bagNotSaid)}`] : []),
  ];
  return notes.length === 0 ? NO_NOTE : notes.join('; ');
}

export function seedListLeftOut({ unbagged, unharvested, harvestsRecorded }: SeedList): readonly string[] {
  const bagless = unbagged === 1 ? 'no se ofrece' : 'no se ofrecen';
  const undated =
    unharvested === 1 ? 'no tiene fecha de cosecha y no cuenta' : 'no tienen fecha de cosecha y no cuentan';
  const ripe = unharvested === 1 ? 'maduro' : 'maduros';
  return [
    ...(unbagged > 0
      ? [`${fruitsIn(unbagged)} de flores sin bolsa ${bagless}: un insecto pudo haber traído otro polen.`]
      : []),
    ...(unharvested > 0 ? [`${fruitsIn(unharvested)} ${undated} como ${ripe}.`] : []),
    ...(harvestsRecorded
      ? []
      : [
          'No consta ninguna fecha de cosecha, así que todo fruto que no cayó contaría como maduro: mire antes de prometer semilla.',
        ]),
    'No se ofrecen los frutos de flores de control.',
  ];
}
