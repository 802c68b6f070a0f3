/** Counts with the nouns that are used everywhere. */

import { counted, counts } from './numbers.ts';

export const flowersIn = (count: number): string => counted(count, 'flor', 'flores');
export const fruitsIn = (count: number): string => counted(count, 'fruto', 'frutos');
export const seedsIn = (count: number): string => counted(count, 'semilla', 'semillas');
export const pairsIn = (count: number): string => counted(count, 'pareja', 'parejas');
export const vialsIn = (count: number): string => counted(count, 'vial', 'viales');
export const crossesIn = (count: number): string => counted(count, 'cruce', 'cruces');
export const rowsIn = (count: number): string => counted(count, 'fila', 'filas');
export const filesIn = (count: number): string => counted(count, 'archivo', 'archivos');
export const daysIn = (count: number): string => counted(count, 'día', 'días');
export const tagsIn = (count: number): string => counted(count, 'etiqueta', 'etiquetas');

/** "cuajaron 7 de 20", "cuajó 1 de 5". */
export function tookIn(fruits: number, flowers: number): string {
  return `${fruits === 1 ? 'cuajó' : 'cuajaron'} ${counts(fruits, flowers)}`;
}
