/** Facts of a season beside the main answers: pending flowers, lost tags, controls, harvest, seasons, growers, waves. */
import type { Controls, CorrectedRate } from '../../analysis/controls.ts';
import type { FruitSet } from '../../analysis/fruit-set.ts';
import type { Look, Pending } from '../../analysis/pending.ts';
import type { RawRates } from '../../analysis/raw.ts';
import type { SeasonChange, Seasons } from '../../analysis/seasons.ts';
import type { Wave } from '../../analysis/waves.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { pointOf, turned, withinOne } from '../told/estimates.ts';
import { daySaid } from './dates.ts';
import {
  capitalised,
  counted,
  countedOf,
  counts,
  difference,
  joined,
  rate,
  rateInText,
  rateWithRange,
  wholeNumber,
} from './numbers.ts';
import { pollenOf } from './storage.ts';

/** More days than this are told as from and to. */
const MOST_DAYS = 3;

/** Methods whose rate less the background is told. */
const MOST_METHODS = 2;

function daysToLook(looks: readonly Look[]): string {
  if (looks.length > MOST_DAYS) {
    return `regarder du ${daySaid(looks[0]!.lookOn)} au ${daySaid(looks.at(-1)!.lookOn)}, chacune à ses deux semaines`;
  }
  const days = looks.map(({ lookOn, flowers }) =>
    looks.length === 1 ? `le ${daySaid(lookOn)}` : `${counted(flowers, 'fleur')} le ${daySaid(lookOn)}`,
  );
  return `regarder ${joined(days)}`;
}

/** Flowers too young to tell, and when to look. */
export function pendingSaid({ flowers, due, looks, awaitingHarvest, asOf }: Pending): string {
  const hanging = awaitingHarvest === 0 ? '' : `${counted(awaitingHarvest, 'fruit')} encore à récolter. `;
  if (flowers === 0) return hanging.trim();
  const coming = looks.filter((look) => !look.due);
  const now =
    due === 0
      ? ''
      : ` ${wholeNumber(due)} ${due === 1 ? 'pouvait' : 'pouvaient'} être ${due === 1 ? 'vue' : 'vues'} le ${daySaid(asOf ?? '')} : regarder maintenant.`;
  const later = coming.length === 0 ? '' : ` ${capitalised(daysToLook(coming))}.`;
  const marked = flowers === 1 ? 'fleur est marquée' : 'fleurs sont marquées';
  return `${hanging}${wholeNumber(flowers)} ${marked} comme trop jeune${flowers === 1 ? '' : 's'} pour le dire.${now}${later}`;
}

/** Lost tags by method, and how far they could move the comparison. */
export function lostTagsByMethodSaid({ lostTags }: Pick<RawRates, 'lostTags'>): string {
  const lost = lostTags.byStorage.filter((method) => method.lost > 0);
  if (lost.length === 0) return '';
  const methods = lost.map(
    ({ storage, lost: tags, lowest, highest }) =>
      `${pollenOf(storage)} : ${counted(tags, 'étiquette perdue', 'étiquettes perdues')}, donc ${wholeNumber(lowest.fruits)} à ${counts(highest.fruits, highest.flowers)} ont noué`,
  );
  const [gap] = lostTags.difference;
  const worst =
    gap === undefined || gap.lowest.estimate === null || gap.highest.estimate === null
      ? ''
      : ` Quoi que soient devenues ces fleurs, sur toutes les fleurs le ${pollenOf(gap.storage)} a donné ${gapSaid(gap.lowest, gap.highest)}.`;
  return `${capitalised(methods.join(' ; '))}.${worst}`;
}

function gapSaid(lowest: Estimate, highest: Estimate): string {
  const [least, most] = [difference(pointOf(lowest)), difference(pointOf(highest))];
  return least === most ? least : `entre ${least} et ${most}`;
}

/** What control flowers did, and what that takes from the other rates. */
export function controlsSaid({ unpollinated, selfed, corrected }: Controls): string {
  const parts = [
    ...(unpollinated.flowers > 0 ? [`sans pollen ${rateInText(unpollinated)}`] : []),
    ...(selfed.flowers > 0 ? [`avec le pollen de leur propre plante ${rateInText(selfed)}`] : []),
  ];
  if (parts.length === 0) return '';
  const effects = corrected.filter(({ control }) => control === 'unpollinated').slice(0, MOST_METHODS);
  const less =
    effects.length === 0
      ? ''
      : ` Déduction faite de ce qui noue sans pollen : ${effects.map(correctedSaid).join(' ; ')}.`;
  return `Fleurs témoins qui ont noué : ${joined(parts)}.${less}`;
}

function correctedSaid({ storage, raw, corrected }: CorrectedRate): string {
  return `${pollenOf(storage)}, ${counts(raw.fruits, raw.flowers)} comptés (alors ${rate(withinOne(corrected))})`;
}

/** Initial and final fruit set. */
export function fruitSetSaid({ initial, final, kept, harvestsRecorded }: FruitSet): string {
  if (initial.flowers === 0) return '';
  const start = `Au contrôle ${countedOf(initial.fruits, initial.flowers, 'fleur')} ${initial.fruits < 2 ? 'avait' : 'avaient'} noué (nouaison initiale)`;
  const end = harvestsRecorded ? 'sont arrivées à la récolte' : 'n’avaient pas perdu leur fruit';
  const rest =
    kept.flowers === 0
      ? ''
      : ` ; des fruits dont la fin est connue, ${counts(kept.fruits, kept.flowers)} ${harvestsRecorded ? 'y sont arrivés' : 'sont restés'}`;
  return `${start}, et ${counts(final.fruits, final.flowers)} ${end} (nouaison finale)${rest}.`;
}

/** What changed since last season. */
export function seasonChangeSaid({ changes }: Seasons): string {
  const last = changes.at(-1);
  return last === undefined ? '' : changeSaid(last);
}

function changeSaid({ from, to, earlier, later, difference: gap, likeForLike }: SeasonChange): string {
  const start =
    `En ${from}, ${counts(earlier.fruits, earlier.flowers)} ont noué ; en ${to}, ${counts(later.fruits, later.flowers)} : ` +
    `${difference(turned(gap))} par rapport à la saison d’avant`;
  if (likeForLike.estimate === null) {
    return `${start}. Trop peu de couples ont eu la même sorte de pollen dans les deux saisons pour dire si cela vient de la saison ou des couples.`;
  }
  return `${start} ; à couples égaux, avec la même sorte de pollen, ${difference(turned(likeForLike))}.`;
}

/** How plants of the same name with several growers were taken. */
export function growersSaid({ growers }: Seasons): string {
  const { names, samePlants, toldApart, unplaced } = growers;
  if (names.length < 2) return '';
  const start = `${counted(names.length, 'cultivateur')} : ${joined(names)}.`;
  if (samePlants)
    return `${start} Les plantes de même nom comptent comme une seule plante, comme vous l’avez dit.`;
  const shared = new Set(toldApart.map(({ name }) => name)).size;
  const apart =
    shared === 0
      ? ' Aucun nom de plante ne se trouve chez deux d’entre eux.'
      : ` ${counted(shared, 'nom')} de plantes se ${shared === 1 ? 'trouve' : 'trouvent'} chez plus d’un d’entre eux ; ce sont pour nous des plantes différentes, qui portent le nom du cultivateur.`;
  const open = unplaced.map(({ name, kind }) => `${name} (${kind})`);
  return `${start}${apart}${open.length === 0 ? '' : ` De qui est la plante n’est pas clair pour ${joined(open)} : l’écrire avec le nom du cultivateur.`}`;
}

export const WAVE_COLUMNS = ['saison', 'vague', 'matins', 'taux et fourchette'] as const;

/** Rows of the table of waves. */
export function waveRows(waves: readonly Wave[]): readonly (readonly string[])[] {
  const several = new Set(waves.map(({ grower }) => grower)).size > 1;
  return waves.map(({ season, grower, wave, from, to, ...own }) => [
    several ? `${season}, ${grower ?? 'cultivateur non nommé'}` : season,
    wave ?? 'non dit',
    from === to ? from : `${from} à ${to}`,
    rateWithRange(own),
  ]);
}
