/** What `analyse` says at the terminal around its numbers, in Spanish. */

import type { Analysis } from '../../analyse.ts';
import type { VialAdvice } from '../../decisions/vials.ts';
import { rowsIn } from './nouns.ts';
import { counts, percent, wholeNumber } from './numbers.ts';

export const summaryWords = {
  rows: ({ read, used, leftOut }: Pick<Analysis['rows'], 'read' | 'used' | 'leftOut'>): string =>
    `${rowsIn(read)} ${read === 1 ? 'leída' : 'leídas'}, ${wholeNumber(used)} ${used === 1 ? 'usada' : 'usadas'}, ${wholeNumber(leftOut)} fuera`,
  fruitSet: 'Cuajado',
  allFlowers: 'todas las flores',
  compared: 'En igualdad de condiciones, en las mismas parejas: frente al polen fresco',
  halfAges: 'Días hasta que el cuajado es la mitad del que hay a la edad 0',
  vials: (useOn: string): string => `Viales, para usar el ${useOn}`,
  vial: (
    { pollenParent, fruits, flowers }: Pick<VialAdvice, 'pollenParent' | 'fruits' | 'flowers'>,
    expected: string | null,
  ): string => {
    const record = flowers === 0 ? 'aún sin usar' : `hasta ahora ${counts(fruits, flowers)}`;
    return `${pollenParent}, ${record}${expected === null ? '' : `; esperado: ${expected}`}`;
  },
  plan: 'Flores de la próxima temporada',
  best: 'lo mejor',
  mix: (gives: string, risks: string): string => `${gives}; ${risks}`,
  closing: (level: number): string =>
    `Los márgenes tienen el nivel ${percent(level)}. --json imprime todos los números; report los escribe como página.`,
};
