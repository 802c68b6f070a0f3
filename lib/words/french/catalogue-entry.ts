/** What the catalogue says of many problems alike. */

export const LEFT_OUT = 'La ligne est laissée de côté.';
export const USED = 'La ligne sert.';
export const NO_ROW = 'Aucune ligne du fichier ne sert.';
export const ALL_USED = 'Toutes les lignes servent.';
export const IF_NEEDED =
  'La ligne est laissée de côté là où la colonne est nécessaire ; sinon elle sert sans la case.';
export const WITHOUT_CELL = 'La ligne sert sans cette case.';
