/** Der Plan für die Blüten der nächsten Saison in Worten. */

import type { Analysis } from '../../analyse.ts';
import type { Mix, MixName } from '../../decisions/mix.ts';
import type { NextSeason } from '../../decisions/next-season.ts';
import {
  crossesTried,
  idleFlowers,
  leftOutByReason,
  linesByCross,
  namedOf,
  roundSeeds,
} from '../told/mixes.ts';
import { pairName } from './choice-figures.ts';
import { flowersIn, fruitsIn, seedsIn } from './nouns.ts';
import { counted, counts, joined, likely, wholeNumber } from './numbers.ts';
import { reasonSentence } from './reasons.ts';

export { crossesTried, namedOf } from '../told/mixes.ts';

const MIX_LABELS: Readonly<Record<MixName, string>> = {
  'most-fruit': 'meiste Früchte',
  balanced: 'dazwischen',
  'most-varieties': 'meiste Sorten',
};

export function mixLabel(name: MixName | null, number = ''): string {
  return name === null ? `Mischung ${number}`.trimEnd() : MIX_LABELS[name];
}

export function mixGives({ expectedFruits, expectedVarieties }: Mix): string {
  const varieties = Math.round(expectedVarieties);
  return `etwa ${fruitsIn(Math.round(expectedFruits))} aus ${counted(varieties, 'Kreuzung', 'Kreuzungen')}`;
}

export function mixRisks({ fruits: { percentile10, percentile90 } }: Mix): string {
  const range =
    percentile10 === percentile90
      ? fruitsIn(percentile10)
      : `${wholeNumber(percentile10)} bis ${fruitsIn(percentile90)}`;
  return `${range} in 8 von 10 Saisons`;
}

export function planAnswer({ plan }: Pick<Analysis, 'plan'>): string {
  if (plan === null) {
    return 'Für einen Plan die erwarteten Blüten in eine CSV- oder .xlsx-Datei schreiben (seed_parent, flowers und, wenn bekannt, opens_from und opens_to) und sie zu den eigenen Dateien legen.';
  }
  const [first] = plan.frontier;
  if (first === undefined) return reasonSentence(plan.because ?? 'no-model');
  const flowers = `${flowersIn(plan.flowers)} der nächsten Saison`;
  if (plan.frontier.length === 1) return `${flowers} könnten ${mixGives(first)} geben: ${mixRisks(first)}.`;
  const [start, ...ways] = namedOf(plan);
  const others = ways.map(
    ({ expectedFruits, expectedVarieties }) =>
      `${wholeNumber(expectedFruits)} aus ${wholeNumber(expectedVarieties)}`,
  );
  return `${flowers} könnten ${joined([mixGives(start!), ...others], 'oder')} geben: mehr Kreuzungen, weniger Früchte.`;
}

export function planShort({ plan }: Pick<Analysis, 'plan'>): string {
  if (plan === null || plan.frontier.length === 0) return '';
  const ends = [plan.frontier[0]!, ...plan.frontier.slice(1).slice(-1)].map(mixGives);
  return `${flowersIn(plan.flowers)} der nächsten Saison könnten ${joined(ends, 'oder')} geben.`;
}

export const PLAN_CAUTION =
  'Angenommen ist, dass frischer Pollen jede Blüte erreicht, die sich mit ihm öffnet. Blüte für Blüte steht es im Kreuzungsblatt.';

export function planNotes(plan: NextSeason): readonly string[] {
  return [
    ...plan.unmet.map(
      (wanted) =>
        `${pairName(wanted)} bekommt ${counts(wanted.planned, wanted.flowers)} gewünschten Blüten${limitSaid(wanted)}. ${reasonSentence(wanted.because)}`,
    ),
    ...idleSaid(plan),
    ...(plan.blankDoses.length === 0
      ? []
      : [`Ohne Angabe der Dosen, darum mit einer geplant: ${joined(plan.blankDoses)}.`]),
    ...leftOutByReason(plan).map(
      ([code, vials]) => `Nicht eingeplant: ${joined(vials)}. ${reasonSentence(code)}`,
    ),
    ...newPlantsSaid(plan),
    ...(plan.usedInPast ? ['Der Tag der Verwendung liegt vor dem letzten Tag der Dateien.'] : []),
  ];
}

function limitSaid({ because, expected, possible, seedParent }: NextSeason['unmet'][number]): string {
  if (because === 'fewer-flowers-expected')
    return `; auf ${seedParent} ${expected === 1 ? 'wird' : 'werden'} ${wholeNumber(expected)} erwartet`;
  return because === 'too-little-pollen' ? `; Pollen ist da für ${wholeNumber(possible)}` : '';
}

function idleSaid(plan: NextSeason): string[] {
  const idle = idleFlowers(plan);
  return idle === 0 ? [] : [`Für ${counts(idle, plan.flowers)} Blüten ist kein Pollen mehr da.`];
}

function newPlantsSaid({ newSeedParents, newPollenParents }: NextSeason): string[] {
  const said = (plants: readonly string[], as: string) =>
    plants.length === 0
      ? []
      : [`Nie als ${as} erprobt, darum wie jede unbekannte Pflanze beurteilt: ${joined(plants)}.`];
  return [...said(newSeedParents, 'Mutterpflanze'), ...said(newPollenParents, 'Pollenspender')];
}

export const planWords = {
  label: 'Die Blüten der nächsten Saison: Früchte gegen Kreuzungen',
  caption: 'Früchte, ihre Spanne in 8 von 10 Saisons, und Kreuzungen mit einer Frucht',
  description:
    'Jeder Punkt ist eine Aufteilung der Blüten: nach rechts mehr Kreuzungen mit einer Frucht, nach oben mehr Früchte. Die großen Punkte ' +
    'haben Namen, mit einer Linie von den Früchten einer schlechten Saison zu denen einer guten, von zehn der zweiten und der neunten.',
  across: 'Kreuzungen mit mindestens einer Frucht',
  up: 'Früchte',
  finding: (plan: NextSeason): string => {
    const [first, ...others] = namedOf(plan);
    if (others.length === 0) return `Eine Aufteilung ist in beidem die beste: ${mixGives(first!)}.`;
    const last = others.at(-1)!;
    return (
      `Von den meisten Früchten zu den meisten Sorten: ${wholeNumber(first!.expectedFruits - last.expectedFruits)} Früchte weniger, ` +
      `${wholeNumber(last.expectedVarieties - first!.expectedVarieties)} Kreuzungen mehr.`
    );
  },
  columns: ['Mischung', 'Früchte', 'Kreuzungen mit Frucht'],
  cells: (mix: Mix, at: number): readonly string[] => [
    mixLabel(mix.name, String(at + 1)),
    `${wholeNumber(mix.expectedFruits)} (${wholeNumber(mix.fruits.percentile10)} bis ${wholeNumber(mix.fruits.percentile90)})`,
    counts(Math.round(mix.expectedVarieties), crossesTried(mix)),
  ],
};

export function mixSeeds({ expectedSeeds }: Mix): string {
  return expectedSeeds === null ? 'keine gezählten Samen' : `etwa ${seedsIn(roundSeeds(expectedSeeds))}`;
}

export const CROSS_COLUMNS = ['Kreuzung', 'Blüten und Pollen', 'mindestens eine Frucht'] as const;

export function crossRows({ allocation }: Pick<Mix, 'allocation'>): readonly (readonly string[])[] {
  return linesByCross(allocation).map((lines) => {
    const pollens = lines.map(
      ({ flowers, vial }) => `${wholeNumber(flowers)} ${vial === null ? 'frisch' : `aus ${vial}`}`,
    );
    return [pairName(lines[0]!), joined(pollens), likely(1 - lines[0]!.noFruit)];
  });
}
