/** Was eine Saison neben ihren Raten enthält. */

import type { Controls, CorrectedRate } from '../../analysis/controls.ts';
import type { FruitSet } from '../../analysis/fruit-set.ts';
import type { Look, Pending } from '../../analysis/pending.ts';
import type { RawRates } from '../../analysis/raw.ts';
import type { SeasonChange, Seasons } from '../../analysis/seasons.ts';
import type { Wave } from '../../analysis/waves.ts';
import type { Estimate } from '../../proportions/interval.ts';
import { pointOf, turned, withinOne } from '../told/estimates.ts';
import { daySaid } from './dates.ts';
import { fruitsIn, tagsIn } from './nouns.ts';
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
import { pollenOf } from './storage.ts';

const MOST_DAYS = 3;
const MOST_METHODS = 2;

function daysToLook(looks: readonly Look[]): string {
  if (looks.length > MOST_DAYS) {
    return `vom ${daySaid(looks[0]!.lookOn)} bis zum ${daySaid(looks.at(-1)!.lookOn)} nachsehen, bei jeder nach zwei Wochen`;
  }
  const days = looks.map(({ lookOn, flowers }) =>
    looks.length === 1 ? `am ${daySaid(lookOn)}` : `bei ${wholeNumber(flowers)} am ${daySaid(lookOn)}`,
  );
  return `${joined(days)} nachsehen`;
}

export function pendingSaid({ flowers, due, looks, awaitingHarvest, asOf }: Pending): string {
  const hanging =
    awaitingHarvest === 0
      ? ''
      : `${fruitsIn(awaitingHarvest)} ${awaitingHarvest === 1 ? 'ist' : 'sind'} noch zu ernten. `;
  if (flowers === 0) return hanging.trim();
  const coming = looks.filter((look) => !look.due);
  const day = asOf === null ? '' : ` bis zum ${daySaid(asOf)}`;
  const now = due === 0 ? '' : ` Nach ${wholeNumber(due)} ließ sich${day} schon sehen: jetzt nachsehen.`;
  const later = coming.length === 0 ? '' : ` ${capitalised(daysToLook(coming))}.`;
  const are = flowers === 1 ? 'Blüte ist' : 'Blüten sind';
  return `${hanging}${wholeNumber(flowers)} ${are} als zu jung vermerkt, um etwas zu sagen.${now}${later}`;
}

export function lostTagsByMethodSaid({ lostTags }: Pick<RawRates, 'lostTags'>): string {
  const lost = lostTags.byStorage.filter((method) => method.lost > 0);
  if (lost.length === 0) return '';
  const methods = lost.map(
    ({ storage, lost: tags, lowest, highest }) =>
      `${pollenOf(storage)}: ${tagsIn(tags)} verloren, also haben ${wholeNumber(lowest.fruits)} bis ${counts(highest.fruits, highest.flowers)} angesetzt`,
  );
  const [gap] = lostTags.difference;
  const worst =
    gap === undefined || gap.lowest.estimate === null || gap.highest.estimate === null
      ? ''
      : ` Was auch immer aus diesen Blüten wurde, über alle Blüten gab ${pollenOf(gap.storage)}: ${gapSaid(gap.lowest, gap.highest)}.`;
  return `${capitalised(methods.join('; '))}.${worst}`;
}

function gapSaid(lowest: Estimate, highest: Estimate): string {
  const [least, most] = [difference(pointOf(lowest)), difference(pointOf(highest))];
  return least === most ? least : `zwischen ${least} und ${most}`;
}

export function controlsSaid({ unpollinated, selfed, corrected }: Controls): string {
  const parts = [
    ...(unpollinated.flowers > 0 ? [`ohne Pollen ${rateInText(unpollinated)}`] : []),
    ...(selfed.flowers > 0 ? [`mit dem Pollen der eigenen Pflanze ${rateInText(selfed)}`] : []),
  ];
  if (parts.length === 0) return '';
  const effects = corrected.filter(({ control }) => control === 'unpollinated').slice(0, MOST_METHODS);
  const less =
    effects.length === 0
      ? ''
      : ` Abzüglich dessen, was ohne Pollen ansetzt: ${effects.map(correctedSaid).join('; ')}.`;
  return `Kontrollblüten, die angesetzt haben: ${joined(parts)}.${less}`;
}

function correctedSaid({ storage, raw, corrected }: CorrectedRate): string {
  return `${pollenOf(storage)}, gezählt ${counts(raw.fruits, raw.flowers)} (dann ${rate(withinOne(corrected))})`;
}

export function fruitSetSaid({ initial, final, kept, harvestsRecorded }: FruitSet): string {
  if (initial.flowers === 0) return '';
  const start = `Bei der Kontrolle hatten ${counts(initial.fruits, initial.flowers)} Blüten angesetzt (erster Fruchtansatz)`;
  const end = harvestsRecorded ? 'wurden geerntet' : 'waren nicht abgefallen';
  const rest =
    kept.flowers === 0
      ? ''
      : `; von den Früchten, deren Ende bekannt ist, waren es ${counts(kept.fruits, kept.flowers)}`;
  return `${start}, und ${counts(final.fruits, final.flowers)} ${end} (endgültiger Fruchtansatz)${rest}.`;
}

export function seasonChangeSaid({ changes }: Seasons): string {
  const last = changes.at(-1);
  return last === undefined ? '' : changeSaid(last);
}

function changeSaid({ from, to, earlier, later, difference: gap, likeForLike }: SeasonChange): string {
  const start =
    `In der Saison ${from} haben ${counts(earlier.fruits, earlier.flowers)} angesetzt, in der Saison ${to} waren es ` +
    `${counts(later.fruits, later.flowers)}: ${difference(turned(gap))} als in der Saison davor`;
  if (likeForLike.estimate === null) {
    return `${start}. Zu wenige Paare bekamen in beiden Saisons dieselbe Art von Pollen, um zu sagen, ob es an der Saison oder an den Paaren lag.`;
  }
  return `${start}; bei gleichen Paaren mit derselben Art von Pollen: ${difference(turned(likeForLike))}.`;
}

export function growersSaid({ growers }: Seasons): string {
  const { names, samePlants, toldApart, unplaced } = growers;
  if (names.length < 2) return '';
  const start = `${counted(names.length, 'Züchter', 'Züchter')}: ${joined(names)}.`;
  if (samePlants) return `${start} Pflanzen gleichen Namens gelten als eine Pflanze, wie angegeben.`;
  const shared = new Set(toldApart.map(({ name }) => name)).size;
  const apart =
    shared === 0
      ? ' Kein Pflanzenname steht bei zweien von ihnen.'
      : ` ${counted(shared, 'Pflanzenname', 'Pflanzennamen')} ${shared === 1 ? 'steht' : 'stehen'} bei mehr als einem von ihnen; das gelten als verschiedene Pflanzen, mit dem Namen des Züchters dahinter.`;
  const open = unplaced.map(({ name, kind }) => `${name} (${kind})`);
  return `${start}${apart}${open.length === 0 ? '' : ` Wessen Pflanze gemeint ist, bleibt unklar bei ${joined(open)}: mit dem Namen des Züchters schreiben.`}`;
}

export const WAVE_COLUMNS = ['Saison', 'Blütenwelle', 'Morgen', 'Rate und Spanne'] as const;

export function waveRows(waves: readonly Wave[]): readonly (readonly string[])[] {
  const several = new Set(waves.map(({ grower }) => grower)).size > 1;
  return waves.map(({ season, grower, wave, from, to, ...own }) => [
    several ? `${season}, ${grower ?? 'Züchter nicht genannt'}` : season,
    wave ?? 'nicht gesagt',
    from === to ? from : `${from} bis ${to}`,
    rateWithRange(own),
  ]);
}
