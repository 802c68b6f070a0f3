/** What a coded copy says of itself. */
import type { Analysis } from '../../analyse.ts';
import { counted } from './numbers.ts';

/** That names and dates are not the true ones, and what is left out. */
export function codedSaid({ coded }: Pick<Analysis['provenance'], 'coded'>): string {
  if (coded === undefined) return '';
  const left =
    coded.rowsLeftOut === 0
      ? ''
      : ` ${counted(coded.rowsLeftOut, 'ligne fautive', 'lignes fautives')} n’y ${coded.rowsLeftOut === 1 ? 'est' : 'sont'} pas.`;
  const single =
    coded.level === 'summary'
      ? ' C’est un résumé : ce qui concerne une seule plante, un seul couple ou un seul tube est laissé de côté.'
      : ' Plantes, tubes, étiquettes, cultivateurs et saisons y sont sous des codes.';
  return (
    `Ceci est une copie codée, faite pour être partagée.${single} Toutes les dates sont décalées du même nombre de jours : ` +
    `elles ne sont donc pas les vraies ; les âges, les matins et les comptes le sont.${left}`
  );
}
