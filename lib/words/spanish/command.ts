/** What the command tells people besides its results, in Spanish. */

import type { SeasonFile } from '../../season/season.ts';
import { fileSize } from './file-size.ts';
import { counted, joined, wholeNumber } from './numbers.ts';

const LABELS: ReadonlyMap<string, string> = new Map([
  ['results.json', 'Todos los resultados, para programas (JSON)'],
  ['crosses.csv', 'Los cruces tal como se entendieron (CSV)'],
  ['vials.csv', 'Los viales tal como se entendieron (CSV)'],
  ['flowers.csv', 'Las flores previstas tal como se entendieron (CSV)'],
  ['datapackage.json', 'Qué significan las columnas de estos archivos (JSON)'],
  ['coded-crosses.csv', 'Los cruces con códigos, para leerlos de nuevo (CSV)'],
  ['coded-vials.csv', 'Los viales con códigos (CSV)'],
  ['coded-flowers.csv', 'Las flores previstas con códigos (CSV)'],
]);

export const commandWords = {
  working: 'Calculando…',
  wrote: (file: string): string => `Archivo escrito: ${file}.`,
  standardInput: 'entrada estándar',
  wroteTo: (folder: string, names: readonly string[]): string => `Escrito en ${folder}: ${joined(names)}.`,
  wroteRows: (rows: number, folder: string, names: readonly string[]): string =>
    `${counted(rows, 'fila escrita', 'filas escritas')} en ${folder}: ${joined(names)}.`,
  notWritten: (rows: number, columns: number): string => {
    const parts = [
      ...(rows > 0 ? [`${counted(rows, 'fila', 'filas')} con errores`] : []),
      ...(columns > 0 ? [counted(columns, 'columna suya', 'columnas suyas')] : []),
    ];
    return parts.length === 0 ? '' : `No están ahí: ${joined(parts)}; problems.csv las nombra una por una.`;
  },
  keyKept: (file: string): string =>
    `Los nombres se guardan en ${file}: no lo comparta. Úselo otra vez para la próxima copia, con --key.`,
  savedSettings: (file: string): string =>
    `fruitodds: ajustes guardados en ${file}; la próxima vez dé --settings ${file}`,
  wroteSite: (files: number, bytes: number, folder: string): string =>
    `${counted(files, 'archivo', 'archivos')} (${fileSize(bytes)}) en ${folder}: abra allí index.html.`,
  pageLeftOut: (page: string, packageName: string): string =>
    `fruitodds: falta la página ${page}, porque el paquete ${packageName} no está instalado.`,
  useOnPast: (useOn: string, last: string): string =>
    `fruitodds: --use-on ${useOn} es anterior a la última polinización, ${last}: los consejos sobre los viales valen para un día pasado. ` +
    'Dé un --use-on posterior, o quítelo de los ajustes.',
  problems: (errors: number, warnings: number): string => {
    const parts = [
      ...(errors > 0 ? [counted(errors, 'error', 'errores')] : []),
      ...(warnings > 0 ? [counted(warnings, 'advertencia', 'advertencias')] : []),
    ];
    return parts.length === 0
      ? ''
      : `fruitodds: ${joined(parts)} en los archivos; fruitodds check los nombra todos.`;
  },
  mendFirst: 'Corrija lo que check ha nombrado y vuelva a ejecutarlo.',
  downloadLabel: (name: string): string => LABELS.get(name) ?? name,
  chartFileLabel: (chart: string): string => `El gráfico «${chart}», para programas (Vega-Lite)`,
};

const KINDS: Readonly<Record<string, string>> = {
  crosses: 'cruces',
  vials: 'viales',
  flowers: 'flores previstas',
};

/** What kind of file it is. */
export function fileKind(kind: string): string {
  return KINDS[kind] ?? 'ninguno de nuestros archivos';
}

export const checkWords = {
  rows: ({ kind, rows, used, leftOut }: Pick<SeasonFile, 'kind' | 'rows' | 'used' | 'leftOut'>): string =>
    `${fileKind(kind)}, ${counted(rows, 'fila', 'filas')}, ${wholeNumber(used)} ${used === 1 ? 'usada' : 'usadas'}, ${wholeNumber(leftOut)} fuera`,
  toMend: (fix: string): string => `Remedio: ${fix}`,
  nothing: 'Nada que corregir.',
  errors: 'Errores: lo que nombran queda fuera',
  warnings: 'Advertencias: las filas se usan',
  noticed: 'Observado: nada que corregir si es correcto',
  leftOut: 'Fuera, por motivo',
  leftOutFor: (rows: number, reason: string, listed: string): string =>
    `${counted(rows, 'fila', 'filas')}: ${reason}${listed && ` (${listed.includes(',') ? 'filas' : 'fila'} ${listed})`}`,
  leftOutRow: (row: number, reason: string): string => `La fila ${row} queda fuera: ${reason}`,
  mendOutcome: 'No hay nada que hacer; cuando se sepa el resultado, escríbalo.',
};
