/** Next season's flowers: mixes, their risks, what stands in the way of wishes. */
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
import { counted, countedOf, counts, joined, likely, wholeNumber } from './numbers.ts';
import { reasonSentence } from './reasons.ts';

export { crossesTried, namedOf } from '../told/mixes.ts';

const MIX_LABELS: Readonly<Record<MixName, string>> = {
  'most-fruit': 'le plus de fruits',
  balanced: 'entre les deux',
  'most-varieties': 'le plus de variétés',
};

/** A mix by its name, or by its number on the frontier. */
export function mixLabel(name: MixName | null, number = ''): string {
  return name === null ? `partage ${number}`.trimEnd() : MIX_LABELS[name];
}

/** What a mix is expected to give. */
export function mixGives({ expectedFruits, expectedVarieties }: Mix): string {
  const fruits = Math.round(expectedFruits);
  return `environ ${counted(fruits, 'fruit')} de ${counted(Math.round(expectedVarieties), 'croisement')}`;
}

/** The 10th to the 90th percentile of fruits. */
export function mixRisks({ fruits: { percentile10, percentile90 } }: Mix): string {
  const range =
    percentile10 === percentile90
      ? counted(percentile10, 'fruit')
      : `${wholeNumber(percentile10)} à ${counted(percentile90, 'fruit')}`;
  return `${range} dans 8 saisons sur 10`;
}

/** What next season's flowers could give, or what is needed for a plan. */
export function planAnswer({ plan }: Pick<Analysis, 'plan'>): string {
  if (plan === null) {
    return 'Pour un plan, noter les fleurs attendues dans un fichier CSV ou .xlsx (seed_parent, flowers et, si on les connaît, opens_from et opens_to), et l’ajouter à ses fichiers.';
  }
  const [first] = plan.frontier;
  if (first === undefined) return reasonSentence(plan.because ?? 'no-model');
  const flowers = `Saison prochaine : ${counted(plan.flowers, 'fleur')} ${plan.flowers < 2 ? 'pourrait' : 'pourraient'} donner`;
  if (plan.frontier.length === 1) return `${flowers} ${mixGives(first)} : ${mixRisks(first)}.`;
  const [start, ...ways] = namedOf(plan);
  const others = ways.map(
    ({ expectedFruits, expectedVarieties }) =>
      `${wholeNumber(expectedFruits)} de ${wholeNumber(expectedVarieties)}`,
  );
  return `${flowers} ${joined([mixGives(start!), ...others], 'ou')} : plus de croisements, moins de fruits.`;
}

/** The two ends of the frontier, for the first page. */
export function planShort({ plan }: Pick<Analysis, 'plan'>): string {
  if (plan === null || plan.frontier.length === 0) return '';
  const ends = [plan.frontier[0]!, ...plan.frontier.slice(1).slice(-1)].map(mixGives);
  return `Saison prochaine : ${counted(plan.flowers, 'fleur')} ${plan.flowers < 2 ? 'pourrait' : 'pourraient'} donner ${joined(ends, 'ou')}.`;
}

export const PLAN_CAUTION =
  'On suppose que le pollen frais suffit à chaque fleur qui s’ouvre avec lui. La feuille de croisement le donne fleur par fleur.';

/** What a reader of the plan must know besides. */
export function planNotes(plan: NextSeason): readonly string[] {
  return [
    ...plan.unmet.map(
      (wanted) =>
        `${pairName(wanted)} reçoit ${countedOf(wanted.planned, wanted.flowers, 'fleur souhaitée', 'fleurs souhaitées')}${limitSaid(wanted)}. ${reasonSentence(wanted.because)}`,
    ),
    ...idleSaid(plan),
    ...(plan.blankDoses.length === 0
      ? []
      : [`Sans nombre de doses, donc prévus avec une seule : ${joined(plan.blankDoses)}.`]),
    ...leftOutByReason(plan).map(
      ([because, vials]) => `Non prévus : ${joined(vials)}. ${reasonSentence(because)}`,
    ),
    ...newPlantsSaid(plan),
    ...(plan.usedInPast ? ['Le jour d’utilisation précède le dernier jour des fichiers.'] : []),
  ];
}

/** What limits a wish, in numbers. */
function limitSaid({ because, expected, possible, seedParent }: NextSeason['unmet'][number]): string {
  if (because === 'fewer-flowers-expected')
    return ` ; ${wholeNumber(expected)} ${expected === 1 ? 'est attendue' : 'sont attendues'} sur ${seedParent}`;
  return because === 'too-little-pollen' ? ` ; il y a du pollen pour ${wholeNumber(possible)}` : '';
}

function idleSaid(plan: NextSeason): string[] {
  const idle = idleFlowers(plan);
  return idle === 0
    ? []
    : [`Pour ${countedOf(idle, plan.flowers, 'fleur')} il ne reste pas de pollen à donner.`];
}

function newPlantsSaid({ newSeedParents, newPollenParents }: NextSeason): string[] {
  const said = (plants: readonly string[], as: string) =>
    plants.length === 0
      ? []
      : [`Jamais essayées comme ${as}, donc jugées comme toute plante inconnue : ${joined(plants)}.`];
  return [...said(newSeedParents, 'mères'), ...said(newPollenParents, 'pères')];
}

export const planWords = {
  label: 'Fleurs de la saison prochaine : fruits ou croisements',
  caption: 'Fruits, leur fourchette dans 8 saisons sur 10, et croisements avec un fruit',
  description:
    'Chaque point est une façon de partager les fleurs : vers la droite plus de croisements avec un fruit, vers le haut plus de fruits. ' +
    'Les grands points ont un nom, et une ligne des fruits d’une mauvaise saison à ceux d’une bonne, de dix la deuxième et la neuvième.',
  across: 'croisements avec au moins un fruit',
  up: 'fruits',
  finding: (plan: NextSeason): string => {
    const [first, ...others] = namedOf(plan);
    if (others.length === 0) return `Un seul partage est le meilleur des deux côtés : ${mixGives(first!)}.`;
    const last = others.at(-1)!;
    return (
      `Du plus de fruits au plus de variétés on perd ${counted(Math.round(first!.expectedFruits - last.expectedFruits), 'fruit')} ` +
      `et on gagne ${counted(Math.round(last.expectedVarieties - first!.expectedVarieties), 'croisement')}.`
    );
  },
  columns: ['partage', 'fruits', 'croisements avec un fruit'],
  cells: (mix: Mix, at: number): readonly string[] => [
    mixLabel(mix.name, String(at + 1)),
    `${wholeNumber(mix.expectedFruits)} (${wholeNumber(mix.fruits.percentile10)} à ${wholeNumber(mix.fruits.percentile90)})`,
    counts(Math.round(mix.expectedVarieties), crossesTried(mix)),
  ],
};

/** Seeds that a mix is expected to give. */
export function mixSeeds({ expectedSeeds }: Mix): string {
  return expectedSeeds === null
    ? 'graines non comptées'
    : `environ ${counted(roundSeeds(expectedSeeds), 'graine')}`;
}

export const CROSS_COLUMNS = ['croisement', 'fleurs et pollen', 'au moins un fruit'] as const;

/** One row a cross of a mix. */
export function crossRows({ allocation }: Pick<Mix, 'allocation'>): readonly (readonly string[])[] {
  return linesByCross(allocation).map((lines) => {
    const pollens = lines.map(
      ({ flowers, vial }) => `${wholeNumber(flowers)} ${vial === null ? 'avec du frais' : `de ${vial}`}`,
    );
    return [pairName(lines[0]!), joined(pollens), likely(1 - lines[0]!.noFruit)];
  });
}
