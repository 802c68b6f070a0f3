/** The season review's own sentences: what each section answers, counts first. */

import type { Analysis } from '../../analyse.ts';
import type { HalfAge } from '../../analysis/age-curve.ts';
import type { FreshVersusStored } from '../../analysis/fresh-versus-stored.ts';
import type { PooledPair } from '../../analysis/pairs.ts';
import type { AgeBand } from '../../analysis/raw.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import { FEWEST_RANKED, flowersRead, methodsInOrder, safestPair, verdictTally } from '../told/review.ts';
import type { VialStanding } from '../told/vials.ts';
import { pairName } from './choice-figures.ts';
import { daySaid } from './dates.ts';
import { days, daysWithRange } from './durations.ts';
import { flowersIn, pairsIn, rowsIn, tagsIn, tookIn, vialsIn } from './nouns.ts';
import {
  CANNOT_TELL,
  capitalised,
  counted,
  counts,
  decimal,
  difference,
  inTen,
  joined,
  rate,
  wholeNumber,
} from './numbers.ts';
import { agesSaid } from './rate-figures.ts';
import { pollenOf, storageLabel, thePollenOf } from './storage.ts';

export { FEWEST_RANKED } from '../told/review.ts';

const VERDICTS: Readonly<Record<VialStanding, string>> = {
  keep: 'conservar',
  'use-first': 'usar primero',
  'test-first': 'probar',
  discard: 'desechar',
  empty: 'vacío',
};

export function seasonAnswer(
  { raw, vials, rows }: Pick<Analysis, 'raw' | 'vials' | 'rows'>,
  vialCount = vials.length,
): string {
  const size = [flowersIn(flowersRead(rows)), pairsIn(raw.byPair.length)];
  if (vialCount > 0) size.push(vialsIn(vialCount));
  const verdicts = vials.length > 0 ? [verdictCounts(vials)] : [];
  return [`${size.join(', ')}.`, methodCounts(raw.byStorage), ...verdicts].join(' ');
}

/** "Con polen congelado 41 de 120, fresco 78 de 130." */
function methodCounts(byStorage: Analysis['raw']['byStorage']): string {
  const [first, ...rest] = methodsInOrder(byStorage);
  if (first === undefined) return 'Todavía no se conoce el resultado de ninguna flor.';
  return `${[
    `Con ${pollenOf(first.storage)} ${tookIn(first.fruits, first.flowers)}`,
    ...rest.map(({ storage, fruits, flowers }) => `${storageLabel(storage)} ${counts(fruits, flowers)}`),
  ].join(', ')}.`;
}

export function verdictCounts(vials: readonly VialAdvice[]): string {
  const tally = verdictTally(vials).map(([verdict, count]) => `${VERDICTS[verdict]} ${wholeNumber(count)}`);
  return tally.length === 0 ? '' : `${capitalised(tally.join(', '))}.`;
}

export function tookMeans({ provenance }: Pick<Analysis, 'provenance'>): string {
  const when =
    provenance.options.endpoint === 'final'
      ? 'el fruto llegó a la cosecha'
      : 'había fruto en la primera revisión';
  return `«Cuajó»: ${when}; las flores de control se cuentan aparte.`;
}

export function rowsAnswer({ rows }: Pick<Analysis, 'rows'>): string {
  const { read, used, leftOut, byReason } = rows;
  const start = `Se han usado ${wholeNumber(used)} de ${rowsIn(read)}`;
  if (leftOut === 0) return `${start}: no queda fuera ninguna.`;
  const reasons = counted(byReason.length, 'motivo', 'motivos');
  return `${start}; ${leftOut === 1 ? 'queda' : 'quedan'} fuera ${wholeNumber(leftOut)}, por ${reasons}.`;
}

export function lostTagsSaid({ raw }: Pick<Analysis, 'raw'>): string {
  const { lost, lowest, highest } = raw.lostTags.overall;
  const { fruits, flowers } = raw.overall;
  if (lost === 0) return 'No se perdió ninguna etiqueta.';
  const one = lost === 1;
  const hidden = one ? 'esa flor hubiera' : `esas ${wholeNumber(lost)} flores hubieran`;
  return (
    `Se ${one ? 'perdió' : 'perdieron'} ${tagsIn(lost)}. Contando sin ${one ? 'ella' : 'ellas'}, ${tookIn(fruits, flowers)}. ` +
    `Si ${hidden} fallado, habrían cuajado ${counts(lowest.fruits, lowest.flowers)}; si ${hidden} cuajado, ` +
    `${counts(highest.fruits, highest.flowers)}. Las respuestas están entre ambos extremos.`
  );
}

export function storedAnswer(entry: FreshVersusStored, freshIsTold = false): string {
  const { storage, fresh, stored } = entry;
  const start = `Con ${pollenOf(storage)} ${tookIn(stored.fruits, stored.flowers)}`;
  if (fresh.flowers === 0) return `${start}; no hay polen fresco con el que compararlo.`;
  const both = freshIsTold ? start : `${start}, con polen fresco ${counts(fresh.fruits, fresh.flowers)}`;
  if (entry.adjusted.estimate === null) return `${both}${whyNotLikeForLike(entry)}`;
  return `${both}; en igualdad de condiciones (las mismas parejas), ${thePollenOf(storage)} da ${difference(entry.adjusted)}.`;
}

function whyNotLikeForLike({ adjusted, difference: gap, informativePairs }: FreshVersusStored): string {
  if (adjusted.because === 'being-worked-out') {
    return `: contando todas las flores, ${difference(gap)}. En igualdad de condiciones (las mismas parejas) todavía se está calculando.`;
  }
  if (informativePairs >= 3) return '. En igualdad de condiciones, con estas flores aún no se sabe.';
  const pairs =
    informativePairs === 0
      ? 'Ninguna pareja tuvo'
      : `Solo ${pairsIn(informativePairs)} ${informativePairs === 1 ? 'tuvo' : 'tuvieron'}`;
  return `. ${pairs} ambos tipos de polen y ambos resultados, así que no se puede separar el efecto del polen del de la pareja.`;
}

export function confoundingSaid({ storage, difference: raw, adjusted }: FreshVersusStored): string {
  if (raw.estimate === null || adjusted.estimate === null) return '';
  if (Math.abs(raw.estimate - adjusted.estimate) < 0.1) return '';
  const way = raw.estimate > adjusted.estimate ? 'difíciles' : 'fáciles';
  return `Que las dos difieran encaja con que ${thePollenOf(storage)} fuera a parejas más ${way}.`;
}

export function halfAgeAnswer(half: HalfAge, byAge: readonly AgeBand[]): string {
  const { storage, oldestAgeDays } = half;
  const bands = byAge.filter((band) => band.storage === storage && band.estimate !== null);
  if (oldestAgeDays === null) {
    return `${capitalised(pollenOf(storage))}: no se conoce la edad del polen de ninguna flor.`;
  }
  return `${capitalised(agesSaid(storage, bands))}; ${fadingSaid(half, days(oldestAgeDays))}`;
}

function fadingSaid(half: HalfAge, oldest: string): string {
  const { estimate, lower, oldestAgeDays } = half;
  if (estimate !== null) {
    return `el cuajado baja a la mitad al cabo de ${daysWithRange(half)}; el más viejo que se probó tenía ${oldest}.`;
  }
  if (lower === null) {
    return `se probó a una sola edad o de un solo vial, así que ${CANNOT_TELL} con qué rapidez se pierde; el más viejo que se probó tenía ${oldest}.`;
  }
  if (lower < oldestAgeDays!) {
    return `el cuajado tarda más de ${days(lower)} en bajar a la mitad, cuánto más ${CANNOT_TELL}; el más viejo que se probó tenía ${oldest}.`;
  }
  return `a la mayor edad que se probó, ${oldest}, el cuajado no había bajado a la mitad, y más allá no se sabe nada.`;
}

export function pairsAnswer(pairs: readonly PooledPair[]): string {
  const { safest, few } = safestPair(pairs);
  const unranked =
    few === 0
      ? ''
      : ` ${wholeNumber(few)} de ${pairsIn(pairs.length)} ${few === 1 ? 'tiene' : 'tienen'} menos de ${FEWEST_RANKED} flores: muy pocas para ordenarlas.`;
  if (safest === undefined) {
    return `Con estas flores ${CANNOT_TELL} qué pareja es la apuesta más segura.${unranked}`;
  }
  return (
    `La apuesta más segura es ${pairName(safest)}: ${tookIn(safest.fruits, safest.flowers)} ` +
    `(${basisSaid(safest)} ${rate(safest)}).${unranked}`
  );
}

function basisSaid({ basis }: PooledPair): string {
  return basis.storage === 'fresh'
    ? 'con polen fresco'
    : `con ${pollenOf(basis.storage)} de ${days(basis.ageDays)}`;
}

export function vialsAnswer({
  vials,
  worth,
  provenance,
}: Pick<Analysis, 'vials' | 'worth' | 'provenance'>): string {
  if (vials.length === 0) return 'No se dio ningún archivo de viales, así que no hay ninguno que juzgar.';
  const useOn = daySaid(String(provenance.options.useOn));
  return `${verdictCounts(vials)} Para usarlos el ${useOn}: ${worthSaid(worth)}`;
}

function worthSaid(worth: Analysis['worth']): string {
  if (worth.value === null) {
    return 'sin flores con polen fresco con las que comparar, solo usted puede decir qué cuajado merece una flor.';
  }
  const start = `un vial merece una flor si con él cuajarían ${inTen(worth.value)} (${decimal(worth.value, 3)}) o más`;
  if (worth.source === 'option') return `${start}, tal como se indicó.`;
  return `${start}, la mitad que con polen fresco en estas plantas.`;
}

export function scalesSaid({ grower }: Analysis['models']): string {
  if (grower.ageScales.length < 2) return '';
  const parts = grower.ageScales.map(
    ({ ageScale, weight }) =>
      `${ageScale === 'days' ? 'una pérdida constante' : 'una pérdida rápida al principio'} ${wholeNumber(weight * 100)} en 100`,
  );
  return `En pocas temporadas no se llega a saber cómo se pierde el polen, así que cuentan ambas formas: ${joined(parts)}, según lo bien que cada una encaja con las flores.`;
}
