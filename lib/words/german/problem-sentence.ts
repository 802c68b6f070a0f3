/** Wie ein Problem einer Datei gesagt wird. */

import { cited as plainlyCited } from '../told/places.ts';

/** Kopf oder Zelle in Anführungszeichen. */
export function cited(text: string | number | null | undefined): string {
  return `„${plainlyCited(text).slice(1, -1)}“`;
}

const DATE_ORDERS: Readonly<Record<string, string>> = {
  dmy: 'Tag-Monat-Jahr',
  mdy: 'Monat-Tag-Jahr',
  ymd: 'Jahr-Monat-Tag',
};

export function dateOrderName(order: string | number): string {
  return DATE_ORDERS[order] ?? String(order);
}
