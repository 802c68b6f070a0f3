/** What each ripe cross has given and could be offered. */
import type { SeedList, SeedListEntry } from '../../analysis/seed-list.ts';
import type { Germination } from '../../analysis/seeds.ts';
import type { SeedGroup } from '../told/seeds.ts';
import { seedTotals } from '../told/seeds.ts';
import { pairName } from './choice-figures.ts';
import { counted, counts, rateWithRange, wholeNumber } from './numbers.ts';

/** Ripe fruits, seeds and what was not sown, over all crosses. */
export function seedListAnswer(list: SeedList): string {
  if (list.entries.length === 0)
    return 'Aucun fruit mûr d’un croisement n’est noté : il n’y a pas de graines à offrir.';
  const { crosses, fruits, countedFruits, seeds, unsown } = seedTotals(list);
  const start = `${counted(crosses, 'croisement')} ${crosses === 1 ? 'a' : 'ont'} donné ${counted(fruits, 'fruit mûr', 'fruits mûrs')}`;
  if (countedFruits === 0) return `${start} ; les graines d’aucun n’ont été comptées.`;
  const held = `${counts(countedFruits, fruits)} ont eu leurs graines comptées et en contenaient ${wholeNumber(seeds)}`;
  return `${start} ; ${held}, dont ${counted(unsown, 'non semée', 'non semées')}.`;
}

/** What a seed parent has given. */
export function seedParentSaid(group: SeedGroup): string {
  const { crosses, fruits, seeds, countedFruits } = seedTotals(group);
  const held =
    countedFruits === 0 ? 'graines non comptées' : counted(seeds, 'graine comptée', 'graines comptées');
  const given = counted(fruits, 'fruit mûr', 'fruits mûrs');
  return `${group.seedParent} : ${counted(crosses, 'croisement')}, ${given}, ${held}`;
}

export const NO_NOTE = 'aucune';

export const SEED_LIST_COLUMNS = [
  'mère × père',
  'saison',
  'fruits mûrs',
  'graines comptées',
  'dont non semées',
  'germées sur semées',
  'remarque',
] as const;

/** One row a cross and season. */
export function seedListRows({ entries }: Pick<SeedList, 'entries'>): readonly (readonly string[])[] {
  return entries.map((entry) => [
    pairName(entry),
    entry.season,
    wholeNumber(entry.fruits),
    entry.countedFruits === 0 ? 'non comptées' : wholeNumber(entry.seeds),
    entry.countedFruits === 0 ? 'inconnu' : wholeNumber(entry.unsown),
    germinatedSaid(entry.germination),
    noteOf(entry),
  ]);
}

function germinatedSaid({ germinated, sown, ...range }: Germination): string {
  if (sown === 0) return 'non comptées';
  if (germinated === 0 || germinated === sown) return counts(germinated, sown);
  return rateWithRange({ fruits: germinated, flowers: sown, ...range });
}

function noteOf({ fruits, countedFruits, bagNotSaid, seedParent, pollenParent }: SeedListEntry): string {
  const open = fruits - countedFruits;
  const of = (some: number) => (fruits === 1 ? 'ce fruit' : `${counts(some, fruits)} fruits`);
  const notes = [
    ...(seedParent === pollenParent ? ['autofécondé'] : []),
    ...(countedFruits > 0 && open > 0 ? [`graines de ${of(open)} non comptées`] : []),
    ...(bagNotSaid > 0 ? [`sachet non noté pour ${of(bagNotSaid)}`] : []),
  ];
  return notes.length === 0 ? NO_NOTE : notes.join(' ; ');
}

/** What is not in the list, and why. */
export function seedListLeftOut({ unbagged, unharvested, harvestsRecorded }: SeedList): readonly string[] {
  const of = (fruits: number) => counted(fruits, 'fruit');
  return [
    ...(unbagged > 0
      ? [
          `${of(unbagged)} de fleurs sans sachet ${unbagged === 1 ? 'n’est pas offert' : 'ne sont pas offerts'} : un insecte a pu apporter un autre pollen.`,
        ]
      : []),
    ...(unharvested > 0
      ? [
          `${of(unharvested)} sans date de récolte ${unharvested === 1 ? 'n’est pas compté comme mûr' : 'ne sont pas comptés comme mûrs'}.`,
        ]
      : []),
    ...(harvestsRecorded
      ? []
      : [
          'Aucune date de récolte n’est notée : tout fruit qui n’est pas tombé compterait comme mûr. Regarder avant de promettre des graines.',
        ]),
    'Les fruits des fleurs témoins ne sont pas offerts.',
  ];
}
