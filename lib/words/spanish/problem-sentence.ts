/** What every sentence about a problem needs. */

const DATE_ORDERS: Readonly<Record<string, string>> = {
  dmy: 'día-mes-año',
  mdy: 'mes-día-año',
  ymd: 'año-mes-día',
};

/** The order of a date's numbers in words: "día-mes-año" for `dmy`. */
export function dateOrderName(order: string | number): string {
  return DATE_ORDERS[order] ?? String(order);
}

/** A column that is still to be named, as it stands in an option. */
export const ANY_COLUMN = 'columna';

/** The option that reads a header as one of our columns, as it is typed. */
export const mapOption = (header: string | number | null, name: string | number): string =>
  `--map "${header}=${name}"`;

/** The option that joins two names of a plant, as it is typed. */
export const sameOption = (kept: string | number, other: string | number): string =>
  `--same "${kept}=${other}"`;

/** `option` with a header that is still to be named. */
export const MAP_YOURS = mapOption('SU ENCABEZADO', ANY_COLUMN);

/** How a date is to be written. */
export const ISO = 'Escríbala como AAAA-MM-DD.';
