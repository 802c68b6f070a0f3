/** Was über eine kodierte Kopie zu wissen ist. */

import type { Analysis } from '../../analyse.ts';
import { rowsIn } from './nouns.ts';

export function codedSaid({ coded }: Pick<Analysis['provenance'], 'coded'>): string {
  if (coded === undefined) return '';
  const left =
    coded.rowsLeftOut === 0
      ? ''
      : ` ${rowsIn(coded.rowsLeftOut)} mit einem Fehler ${coded.rowsLeftOut === 1 ? 'steht' : 'stehen'} nicht darin.`;
  const single =
    coded.level === 'summary'
      ? ' Es ist eine Zusammenfassung: was einzelne Pflanzen, Paare und Röhrchen betrifft, fehlt.'
      : ' Pflanzen, Röhrchen, Etiketten, Züchter und Saisons stehen unter Codes.';
  return (
    `Dies ist eine kodierte Kopie zum Weitergeben.${single} Jedes Datum ist um dieselbe Zahl von Tagen verschoben: die ` +
    `Daten hier sind nicht die wahren, Alter, Morgen und Anzahlen sind es.${left}`
  );
}
