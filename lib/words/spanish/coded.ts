/** What a reader of a coded copy must know. */

import type { Analysis } from '../../analyse.ts';
import { rowsIn } from './nouns.ts';

export function codedSaid({ coded }: Pick<Analysis['provenance'], 'coded'>): string {
  if (coded === undefined) return '';
  const left =
    coded.rowsLeftOut === 0
      ? ''
      : ` ${rowsIn(coded.rowsLeftOut)} con algún fallo no ${coded.rowsLeftOut === 1 ? 'está' : 'están'} en ella.`;
  const single =
    coded.level === 'summary'
      ? ' Es un resumen: no incluye lo que trata de plantas, parejas y viales sueltos.'
      : ' Plantas, viales, etiquetas, cultivadores y temporadas figuran con códigos.';
  return (
    `Esta es una copia codificada, hecha para compartir.${single} Todas las fechas se han desplazado el mismo número de días, ` +
    `así que aquí no son las verdaderas; las edades, las mañanas y los recuentos sí lo son.${left}`
  );
}
