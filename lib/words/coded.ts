/** What a reader of a coded copy must know. */

import type { Analysis } from '../analyse.ts';
import { counted } from './numbers.ts';

/**
 * That the page is a coded copy, what was changed in it and what is not in it; empty for a grower's own page.
 *
 * @example codedSaid({ coded: { level: 'summary', rowsLeftOut: 0 } }) // 'This is a coded copy, made for sharing. It is a summary: …'
 */
export function codedSaid({ coded }: Pick<Analysis['provenance'], 'coded'>): string {
  if (coded === undefined) return '';
  const faults = counted(coded.rowsLeftOut, 'row');
  const left =
    coded.rowsLeftOut === 0
      ? ''
      : ` ${faults} with a fault ${coded.rowsLeftOut === 1 ? 'is' : 'are'} not in it.`;
  const single =
    coded.level === 'summary'
      ? ' It is a summary: what is about single plants, pairs and vials is left out.'
      : ' Plants, vials, tags, growers and seasons stand under codes.';
  return (
    `This is a coded copy, made for sharing.${single} Every date is moved by the same number of days, so dates here are ` +
    `not the true ones; ages, mornings and counts are.${left}`
  );
}
