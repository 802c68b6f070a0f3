/** What a season holds beside its rates: what is pending, lost tags, controls, harvests, seasons, waves, growers. */

import type { Controls, CorrectedRate } from '../../analysis/controls.ts';
import type { FruitSet } from '../../analysis/fruit-set.ts';
import type { Look, Pending } from '../../analysis/pending.ts';
import type { RawRates } from '../../analysis/raw.ts';
import type { SeasonChange, Seasons } from '../../analysis/seasons.ts';
import type { Wave } from '../../analysis/waves.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { pointOf, turned, withinOne } from '../told/estimates.ts';
import { daySaid } from './dates.ts';
import { fruitsIn, tagsIn, tookIn } from './nouns.ts';
import {
  capitalised,
  counted,
  counts,
  difference,
  joined,
  rate,
  rateInText,
  rateWithRange,
  wholeNumber,
} from './numbers.ts';
import { pollenOf, thePollenOf } from './storage.ts';

/** More days than this are not listed one by one. */
const MOST_DAYS = 3;

/** Methods whose rates are said again without the background, most flowers first. */
const MOST_METHODS = 2;

function daysToLook(looks: readonly Look[]): string {
  if (looks.length > MOST_DAYS) {
    return `conviene mirarlas del ${daySaid(looks[0]!.lookOn)} al ${daySaid(looks.at(-1)!.lookOn)}, cada una a sus dos semanas`;
  }
  if (looks.length === 1) {
    const [{ lookOn, flowers }] = looks as readonly [Look];
    return `conviene ${flowers === 1 ? 'mirarla' : 'mirarlas'} el ${daySaid(lookOn)}`;
  }
  const days = looks.map(({ lookOn, flowers }) => `${wholeNumber(flowers)} el ${daySaid(lookOn)}`);
  return `conviene mirar ${joined(days)}`;
}

export function pendingSaid({ flowers, due, looks, awaitingHarvest, asOf }: Pending): string {
  const one = awaitingHarvest === 1;
  const hanging =
    awaitingHarvest === 0 ? '' : `${one ? 'Queda' : 'Quedan'} por cosechar ${fruitsIn(awaitingHarvest)}. `;
  if (flowers === 0) return hanging.trim();
  const coming = looks.filter((look) => !look.due);
  const now =
    due === 0
      ? ''
      : ` ${wholeNumber(due)} ya se ${due === 1 ? 'podía' : 'podían'} mirar el ${daySaid(String(asOf))}: es el momento.`;
  const later = coming.length === 0 ? '' : ` ${capitalised(daysToLook(coming))}.`;
  const are = flowers === 1 ? 'flor está marcada' : 'flores están marcadas';
  return `${hanging}${wholeNumber(flowers)} ${are} como «aún es pronto».${now}${later}`;
}

/** "Con polen fresco se perdieron 5 etiquetas, así que cuajaron de 73 a 78 de 118". */
export function lostTagsByMethodSaid({ lostTags }: Pick<RawRates, 'lostTags'>): string {
  const lost = lostTags.byStorage.filter((method) => method.lost > 0);
  if (lost.length === 0) return '';
  const methods = lost.map(
    ({ storage, lost: tags, lowest, highest }) =>
      `con ${pollenOf(storage)} se ${tags === 1 ? 'perdió' : 'perdieron'} ${tagsIn(tags)}, así que cuajaron de ${wholeNumber(lowest.fruits)} a ${counts(highest.fruits, highest.flowers)}`,
  );
  const [gap] = lostTags.difference;
  const worst =
    gap === undefined || gap.lowest.estimate === null || gap.highest.estimate === null
      ? ''
      : ` Fuera lo que fuera de esas flores, contando todas, ${thePollenOf(gap.storage)} dio ${gapSaid(gap.lowest, gap.highest)}.`;
  return `${capitalised(methods.join('; '))}.${worst}`;
}

/** "entre unas 2 menos de cada 10 y unas 3 menos de cada 10", or one of them where both are said alike. */
function gapSaid(lowest: Estimate, highest: Estimate): string {
  const [least, most] = [difference(pointOf(lowest)), difference(pointOf(highest))];
  return least === most ? least : `entre ${least} y ${most}`;
}

export function controlsSaid({ unpollinated, selfed, corrected }: Controls): string {
  const parts = [
    ...(unpollinated.flowers > 0 ? [`sin polen ${rateInText(unpollinated)}`] : []),
    ...(selfed.flowers > 0 ? [`con polen de la propia planta ${rateInText(selfed)}`] : []),
  ];
  if (parts.length === 0) return '';
  const effects = corrected.filter(({ control }) => control === 'unpollinated').slice(0, MOST_METHODS);
  const less =
    effects.length === 0
      ? ''
      : ` Descontando lo que cuaja sin polen: ${effects.map(correctedSaid).join('; ')}.`;
  return `Flores de control que cuajaron: ${joined(parts)}.${less}`;
}

/** A rate below the background's is none: the range still says how much it could be. */
function correctedSaid({ storage, raw, corrected }: CorrectedRate): string {
  return `${pollenOf(storage)}, ${counts(raw.fruits, raw.flowers)} contados (entonces ${rate(withinOne(corrected))})`;
}

export function fruitSetSaid({ initial, final, kept, harvestsRecorded }: FruitSet): string {
  if (initial.flowers === 0) return '';
  const start = `En la revisión habían cuajado ${counts(initial.fruits, initial.flowers)} flores (cuajado inicial)`;
  const one = final.fruits === 1;
  const end = harvestsRecorded
    ? `${one ? 'llegó' : 'llegaron'} a la cosecha`
    : `no ${one ? 'había' : 'habían'} caído`;
  const rest =
    kept.flowers === 0
      ? ''
      : `; de los frutos cuyo final se conoce, ${counts(kept.fruits, kept.flowers)} lo ${kept.fruits === 1 ? 'hizo' : 'hicieron'}`;
  const said = harvestsRecorded ? rest : rest.replace(/ lo hi(?:zo|cieron)$/, ' siguieron en la planta');
  return `${start}, y ${counts(final.fruits, final.flowers)} ${end} (cuajado final)${said}.`;
}

export function seasonChangeSaid({ changes }: Seasons): string {
  const last = changes.at(-1);
  return last === undefined ? '' : changeSaid(last);
}

function changeSaid({ from, to, earlier, later, difference: gap, likeForLike }: SeasonChange): string {
  const start =
    `En ${from} ${tookIn(earlier.fruits, earlier.flowers)}, en ${to}, ${counts(later.fruits, later.flowers)}: ` +
    `${difference(turned(gap))} que la temporada anterior`;
  if (likeForLike.estimate === null) {
    return `${start}. Muy pocas parejas recibieron el mismo tipo de polen en ambas temporadas para decir si fue la temporada o fueron las parejas.`;
  }
  return `${start}; en igualdad de condiciones (mismas parejas y mismo polen), ${difference(turned(likeForLike))}.`;
}

export function growersSaid({ growers }: Seasons): string {
  const { names, samePlants, toldApart, unplaced } = growers;
  if (names.length < 2) return '';
  const start = `${counted(names.length, 'cultivador', 'cultivadores')}: ${joined(names)}.`;
  if (samePlants)
    return `${start} Las plantas del mismo nombre cuentan como una sola planta, tal como se indicó.`;
  const shared = new Set(toldApart.map(({ name }) => name)).size;
  const open = unplaced.map(({ name, kind }) => `${name} (${kind})`);
  const unclear =
    open.length === 0
      ? ''
      : ` No está claro de quién es la planta a la que se refiere ${joined(open)}: escríbala con el nombre del cultivador.`;
  return `${start}${apartSaid(shared)}${unclear}`;
}

function apartSaid(shared: number): string {
  if (shared === 0) return ' Ningún nombre de planta aparece con dos de ellos.';
  const names = counted(shared, 'nombre', 'nombres');
  return shared === 1
    ? ` ${names} de planta aparece con más de uno de ellos; cuenta como plantas distintas y lleva el nombre del cultivador.`
    : ` ${names} de plantas aparecen con más de uno de ellos; cuentan como plantas distintas y llevan el nombre del cultivador.`;
}

export const WAVE_COLUMNS = ['temporada', 'oleada', 'mañanas', 'frecuencia y margen'] as const;

export function waveRows(waves: readonly Wave[]): readonly (readonly string[])[] {
  const several = new Set(waves.map(({ grower }) => grower)).size > 1;
  return waves.map(({ season, grower, wave, from, to, ...own }) => [
    several ? `${season}, ${grower ?? 'cultivador sin nombrar'}` : season,
    wave ?? 'sin indicar',
    from === to ? from : `${from} a ${to}`,
    rateWithRange(own),
  ]);
}
