/** How a date's order is named in French. */

const DATE_ORDERS: Readonly<Record<string, string>> = {
  dmy: 'jour-mois-année',
  mdy: 'mois-jour-année',
  ymd: 'année-mois-jour',
};

/** The order of a date's numbers in words. */
export function dateOrderName(order: string | number): string {
  return DATE_ORDERS[order] ?? String(order);
}
