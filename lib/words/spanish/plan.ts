/** The plan of next season's flowers in words: what each mix gives and risks, and what one must know beside it. */

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
import { crossesIn, flowersIn, fruitsIn } from './nouns.ts';
import { about, counts, joined, likely, wholeNumber } from './numbers.ts';
import { reasonSentence } from './reasons.ts';

export { crossesTried, namedOf } from '../told/mixes.ts';

const MIX_LABELS: Readonly<Record<MixName, string>> = {
  'most-fruit': 'más frutos',
  balanced: 'intermedio',
  'most-varieties': 'más variedades',
};

/** "más frutos", "intermedio", "más variedades"; a mix without a name has its number. */
export function mixLabel(name: MixName | null, number = ''): string {
  return name === null ? `reparto ${number}`.trimEnd() : MIX_LABELS[name];
}

/** "unos 75 frutos de 18 cruces". */
export function mixGives({ expectedFruits, expectedVarieties }: Mix): string {
  const fruits = about('unos', Math.round(expectedFruits), 'fruto', 'frutos');
  return `${fruits} de ${crossesIn(Math.round(expectedVarieties))}`;
}

/** "de 64 a 86 frutos en 8 de cada 10 temporadas". */
export function mixRisks({ fruits: { percentile10, percentile90 } }: Mix): string {
  const range =
    percentile10 === percentile90
      ? fruitsIn(percentile10)
      : `de ${wholeNumber(percentile10)} a ${fruitsIn(percentile90)}`;
  return `${range} en 8 de cada 10 temporadas`;
}

/** "Las 52 flores de la próxima temporada podrían dar". */
function couldGive(flowers: number): string {
  return flowers === 1
    ? 'La flor de la próxima temporada (1 flor) podría dar'
    : `Las ${flowersIn(flowers)} de la próxima temporada podrían dar`;
}

export function planAnswer({ plan }: Pick<Analysis, 'plan'>): string {
  if (plan === null) {
    return 'Para tener un plan, anote las flores que espera en un archivo CSV o .xlsx (seed_parent, flowers y, si los conoce, opens_from y opens_to) y añádalo a sus archivos.';
  }
  const [first] = plan.frontier;
  if (first === undefined) return reasonSentence(plan.because ?? 'no-model');
  const start = couldGive(plan.flowers);
  if (plan.frontier.length === 1) return `${start} ${mixGives(first)}: ${mixRisks(first)}.`;
  const [most, ...ways] = namedOf(plan);
  const others = ways.map(
    ({ expectedFruits, expectedVarieties }) =>
      `${wholeNumber(expectedFruits)} de ${wholeNumber(expectedVarieties)}`,
  );
  return `${start} ${joined([mixGives(most!), ...others], 'o')}: más cruces, menos frutos.`;
}

export function planShort({ plan }: Pick<Analysis, 'plan'>): string {
  if (plan === null || plan.frontier.length === 0) return '';
  const ends = [plan.frontier[0]!, ...plan.frontier.slice(1).slice(-1)].map(mixGives);
  return `${couldGive(plan.flowers)} ${joined(ends, 'o')}.`;
}

export const PLAN_CAUTION =
  'Se supone que el polen fresco llega a toda flor que se abre a la vez. Flor por flor está en la hoja de cruces.';

export function planNotes(plan: NextSeason): readonly string[] {
  return [
    ...plan.unmet.map(
      (wanted) =>
        `${pairName(wanted)} recibe ${counts(wanted.planned, wanted.flowers)} flores deseadas${limitSaid(wanted)}. ${reasonSentence(wanted.because)}`,
    ),
    ...idleSaid(plan),
    ...(plan.blankDoses.length === 0
      ? []
      : [`Sin número de dosis, así que se planean con una: ${joined(plan.blankDoses)}.`]),
    ...leftOutByReason(plan).map(
      ([code, vials]) => `No se planea con: ${joined(vials)}. ${reasonSentence(code)}`,
    ),
    ...newPlantsSaid(plan),
    ...(plan.usedInPast ? ['El día de uso es anterior al último día de los archivos.'] : []),
  ];
}

/** What limits a wish, in numbers; empty where it is another wish. */
function limitSaid({ because, expected, possible, seedParent }: NextSeason['unmet'][number]): string {
  if (because === 'fewer-flowers-expected')
    return `; en ${seedParent} se ${expected === 1 ? 'espera' : 'esperan'} ${wholeNumber(expected)}`;
  return because === 'too-little-pollen' ? `; hay polen para ${wholeNumber(possible)}` : '';
}

function idleSaid(plan: NextSeason): string[] {
  const idle = idleFlowers(plan);
  return idle === 0 ? [] : [`Para ${counts(idle, plan.flowers)} flores no queda polen que dar.`];
}

function newPlantsSaid({ newSeedParents, newPollenParents }: NextSeason): string[] {
  const said = (plants: readonly string[], as: string) =>
    plants.length === 0
      ? []
      : [`Sin probar todavía como ${as}, así que cuentan como una planta desconocida: ${joined(plants)}.`];
  return [...said(newSeedParents, 'planta madre'), ...said(newPollenParents, 'padre')];
}

export const planWords = {
  label: 'Las flores de la próxima temporada: frutos frente a cruces',
  caption: 'Frutos, su margen en 8 de cada 10 temporadas, y cruces con algún fruto',
  description:
    'Cada punto es una manera de repartir las flores: más a la derecha, más cruces con algún fruto; más arriba, más frutos. Los puntos grandes ' +
    'llevan nombre y una línea que va de los frutos de una temporada mala a los de una buena: de diez, la segunda y la novena.',
  across: 'cruces con al menos un fruto',
  up: 'frutos',
  finding: (plan: NextSeason): string => {
    const [first, ...others] = namedOf(plan);
    if (others.length === 0) return `Un mismo reparto es el mejor en ambas cosas: ${mixGives(first!)}.`;
    const last = others.at(-1)!;
    return (
      `De más frutos a más variedades se renuncia a ${wholeNumber(first!.expectedFruits - last.expectedFruits)} frutos ` +
      `y se ganan ${wholeNumber(last.expectedVarieties - first!.expectedVarieties)} cruces.`
    );
  },
  columns: ['reparto', 'frutos', 'cruces con algún fruto'],
  cells: (mix: Mix, at: number): readonly string[] => [
    mixLabel(mix.name, String(at + 1)),
    `${wholeNumber(mix.expectedFruits)} (de ${wholeNumber(mix.fruits.percentile10)} a ${wholeNumber(mix.fruits.percentile90)})`,
    counts(Math.round(mix.expectedVarieties), crossesTried(mix)),
  ],
};

/** "unas 13 000 semillas". */
export function mixSeeds({ expectedSeeds }: Mix): string {
  return expectedSeeds === null
    ? 'sin recuento de semillas'
    : about('unas', roundSeeds(expectedSeeds), 'semilla', 'semillas');
}

export const CROSS_COLUMNS = ['cruce', 'flores y polen', 'al menos un fruto'] as const;

export function crossRows({ allocation }: Pick<Mix, 'allocation'>): readonly (readonly string[])[] {
  return linesByCross(allocation).map((lines) => {
    const pollens = lines.map(
      ({ flowers, vial }) => `${wholeNumber(flowers)} ${vial === null ? 'con polen fresco' : `de ${vial}`}`,
    );
    return [pairName(lines[0]!), joined(pollens), likely(1 - lines[0]!.noFruit)];
  });
}
