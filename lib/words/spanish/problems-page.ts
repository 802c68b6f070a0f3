/** What the page of everything that `check` can find says around its catalogue. */

import type { CataloguedProblem } from '../problem-catalogue.ts';
import { counted } from './numbers.ts';

const SEVERITIES: Readonly<Record<CataloguedProblem['severity'], string>> = {
  error: 'error',
  warning: 'advertencia',
  notice: 'aviso',
  'error or warning': 'error o advertencia',
};

export const problemsPage = {
  columns: ['Código', 'Qué significa y qué pasa con la fila', 'Cómo se arregla'],
  ofFiles: 'Problemas de un archivo entero',
  ofRows: 'Problemas de una fila',
  cells: ({ code, severity, means, used, mend, example }: CataloguedProblem): readonly string[] => [
    `${code} (${SEVERITIES[severity]})`,
    `${means} ${used}`,
    `${mend} Ejemplo: ${example}`,
  ],
  found: (codes: readonly string[]): string =>
    codes.length === 0
      ? 'En los archivos de esta temporada no se encontró nada de esto.'
      : `En los archivos de esta temporada ${codes.length === 1 ? 'se encontró' : 'se encontraron'} ${counted(codes.length, 'código', 'códigos')} de esta página: ${codes.join(', ')}.`,
};
