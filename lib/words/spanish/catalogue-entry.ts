/** What becomes of rows, said alike everywhere in the catalogue of problems. */

export const LEFT_OUT = 'La fila queda fuera.';
export const USED = 'La fila se usa.';
export const NO_ROW = 'No se usa ninguna fila del archivo.';
export const ALL_USED = 'Se usan todas las filas.';
export const IF_NEEDED = 'La fila queda fuera si la columna es necesaria; si no, se usa sin esa celda.';
export const WITHOUT_CELL = 'La fila se usa sin esa celda.';

/** How to say what a header of the grower's own means. */
export const MAP = '--map "SU ENCABEZADO=columna"';
