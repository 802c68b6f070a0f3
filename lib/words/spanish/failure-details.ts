/** Parts of the sentences about failures: rules of options, causes of the system. */

import type { FailureDetails, FailureWords } from '../english-failures.ts';

/** The sentences of one failure. */
export type FailureSentence = (details: FailureDetails) => FailureWords;

export const SEE_HELP = 'Vea fruitodds --help.';

export function meant(nearest: string | number | null | undefined): string {
  return nearest ? `¿Quería decir ${nearest}? ` : '';
}

/** What an option's value must be, by the code of the rule it broke. */
export const RULES: Readonly<Record<string, (allowed: string | number | null | undefined) => string>> = {
  'one-of': (allowed) => `Dé uno de estos: ${allowed}.`,
  date: () => 'Dé un día que exista como AAAA-MM-DD, por ejemplo 2026-09-30.',
  share: (allowed) => `Dé un número entre 0 y 1, con punto decimal, por ejemplo ${allowed ?? 0.2}.`,
  'file-name': () => 'Dé el nombre de un archivo, por ejemplo report.html.',
  'storage-word': () => 'Escríbalo como "SU PALABRA=método", por ejemplo --storage "cool box=refrigerated".',
  'header-map': () => 'Escríbalo como "SU ENCABEZADO=columna", por ejemplo --map "Mutter=seed_parent".',
  'same-names': () =>
    'Escríbalo como "A=B", por ejemplo --same "Nocturna=nocturna"; se conserva el primer nombre.',
  must: () =>
    'Escriba el cruce, la planta madre primero, y el mínimo de flores, por ejemplo --must "Salt Moon x Copper Tide=2".',
  'at-most': () =>
    'Escriba una planta o un cruce y el máximo de flores, por ejemplo --at-most "Copper Tide=5" o --at-most "Salt Moon x Copper Tide=1".',
  column: (allowed) =>
    `${meant(allowed)}Lo que va tras el = debe ser una de nuestras columnas, por ejemplo seed_parent; fruitodds template -o CARPETA las explica todas.`,
};

/** What a setting must be, by its form. */
export const FORMS: Readonly<Record<string, string>> = {
  list: 'una lista de textos, por ejemplo ["Mutter=seed_parent"]',
  flag: 'true, u omítalo',
  text: 'un texto entre comillas o un número, como en la línea de órdenes',
};

/** Why the system refused to read or write, by its own code. */
const CAUSES: Readonly<Record<string, string>> = {
  ENOENT: 'no existe ese archivo o esa carpeta',
  EISDIR: 'es una carpeta',
  ENOTDIR: 'una parte de su ruta es un archivo, no una carpeta',
  EACCES: 'no tiene permiso',
  EPERM: 'no tiene permiso',
  EROFS: 'el disco es de solo lectura',
  ENOSPC: 'el disco está lleno',
  ENAMETOOLONG: 'su nombre es demasiado largo',
};

export function causeOf(cause: string | number | null | undefined): string {
  return CAUSES[String(cause)] ?? `el sistema dice ${cause}`;
}
