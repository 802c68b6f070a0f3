/** Die Samenliste: was jede reife Kreuzung gegeben hat, und was vor dem Verschicken zu wissen ist. */

import type { SeedList, SeedListEntry } from '../../analysis/seed-list.ts';
import type { Germination } from '../../analysis/seeds.ts';
import type { SeedGroup } from '../told/seeds.ts';
import { seedTotals } from '../told/seeds.ts';
import { pairName } from './choice-figures.ts';
import { crossesIn, fruitsIn, seedsIn } from './nouns.ts';
import { counted, counts, rateWithRange, wholeNumber } from './numbers.ts';

export function seedListAnswer(list: SeedList): string {
  if (list.entries.length === 0)
    return 'Keine reife Frucht einer Kreuzung ist aufgeschrieben; es ist kein Samen anzubieten.';
  const { crosses, fruits, countedFruits, seeds, unsown } = seedTotals(list);
  const start = `${crossesIn(crosses)} ${crosses === 1 ? 'hat' : 'haben'} ${counted(fruits, 'reife Frucht', 'reife Früchte')} gegeben`;
  if (countedFruits === 0) return `${start}; von keiner wurden die Samen gezählt.`;
  const held = `bei ${counts(countedFruits, fruits)} wurden die Samen gezählt, zusammen ${seedsIn(seeds)}`;
  return `${start}; ${held}, davon nicht gesät: ${wholeNumber(unsown)}.`;
}

/** What a seed parent has given. */
export function seedParentSaid(group: SeedGroup): string {
  const { crosses, fruits, seeds, countedFruits } = seedTotals(group);
  const held =
    countedFruits === 0 ? 'Samen nicht gezählt' : counted(seeds, 'gezählter Same', 'gezählte Samen');
  const given = counted(fruits, 'reife Frucht', 'reife Früchte');
  return `${group.seedParent}: ${crossesIn(crosses)}, ${given}, ${held}`;
}

export const NO_NOTE = 'keine';

export const SEED_LIST_COLUMNS = [
  'Mutterpflanze × Pollenspender',
  'Saison',
  'reife Früchte',
  'gezählte Samen',
  'davon nicht gesät',
  'gekeimt von gesäten',
  'Bemerkung',
] as const;

export function seedListRows({ entries }: Pick<SeedList, 'entries'>): readonly (readonly string[])[] {
  return entries.map((entry) => [
    pairName(entry),
    entry.season,
    wholeNumber(entry.fruits),
    entry.countedFruits === 0 ? 'nicht gezählt' : wholeNumber(entry.seeds),
    entry.countedFruits === 0 ? 'nicht bekannt' : wholeNumber(entry.unsown),
    germinatedSaid(entry.germination),
    noteOf(entry),
  ]);
}

function germinatedSaid({ germinated, sown, ...range }: Germination): string {
  if (sown === 0) return 'nicht gezählt';
  if (germinated === 0 || germinated === sown) return counts(germinated, sown);
  return rateWithRange({ fruits: germinated, flowers: sown, ...range });
}

function noteOf({ fruits, countedFruits, bagNotSaid, seedParent, pollenParent }: SeedListEntry): string {
  const open = fruits - countedFruits;
  const of = (some: number) => (fruits === 1 ? 'dieser Frucht' : `${counts(some, fruits)} Früchten`);
  const notes = [
    ...(seedParent === pollenParent ? ['selbstbestäubt'] : []),
    ...(countedFruits > 0 && open > 0 ? [`Samen von ${of(open)} nicht gezählt`] : []),
    ...(bagNotSaid > 0 ? [`Beutel bei ${of(bagNotSaid)} nicht aufgeschrieben`] : []),
  ];
  return notes.length === 0 ? NO_NOTE : notes.join('; ');
}

export function seedListLeftOut({ unbagged, unharvested, harvestsRecorded }: SeedList): readonly string[] {
  return [
    ...(unbagged > 0
      ? [
          `${fruitsIn(unbagged)} von Blüten ohne Beutel ${unbagged === 1 ? 'wird' : 'werden'} nicht angeboten: ein Insekt kann anderen Pollen gebracht haben.`,
        ]
      : []),
    ...(unharvested > 0
      ? [
          `${fruitsIn(unharvested)} ${unharvested === 1 ? 'hat' : 'haben'} kein Erntedatum und ${unharvested === 1 ? 'gilt' : 'gelten'} nicht als reif.`,
        ]
      : []),
    ...(harvestsRecorded
      ? []
      : [
          'Kein Erntedatum ist aufgeschrieben, darum gilt jede nicht abgefallene Frucht als reif: nachsehen, bevor Samen versprochen wird.',
        ]),
    'Früchte von Kontrollblüten werden nicht angeboten.',
  ];
}
