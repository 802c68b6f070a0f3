/** Units that growers write behind a number, and how many of the column's own unit each is. */

const COUNTED =
  'pc, pcs, pieces, ca, St, Stk, Stück, Stueck, uds, unidades, pza, pzas, pièces, pieces, u, seed, seeds, Samen, semilla, ' +
  'semillas, graine, graines, flower, flowers, bloom, blooms, Blüte, Blüten, Bluete, Blueten, flor, flores, fleur, fleurs, ' +
  'dose, doses, Dosis, Dosen, dosis, x, times, mal, veces, fois, sprouted, germinated, gekeimt, germinadas, germées';

const DAYS: readonly (readonly [factor: number, units: string])[] = [
  [1, 'd, day, days, Tag, Tage, Tagen, T, día, días, jour, jours, j'],
  [7, 'w, wk, wks, week, weeks, Woche, Wochen, Wo, semana, semanas, semaine, semaines, sem'],
];

const GRAMS: readonly (readonly [factor: number, units: string])[] = [
  [1, 'g, gr, gm, gram, grams, gramme, grammes, Gramm, gramo, gramos'],
  [1000, 'kg, kilo, kilos, kilogram, kilograms, Kilogramm, kilogramo, kilogramos, kilogramme, kilogrammes'],
  // International avoirdupois ounce, exactly 28.349523125 g (Weights and Measures Act 1963; from memory).
  [28.349523125, 'oz, ounce, ounces'],
];

/** A unit as it is compared: lower case, without accents and full stops. */
function folded(unit: string): string {
  return unit
    .normalize('NFKD')
    .replace(/\p{M}|\./gu, '')
    .trim()
    .toLowerCase();
}

function table(entries: readonly (readonly [factor: number, units: string])[]): ReadonlyMap<string, number> {
  return new Map(
    entries.flatMap(([factor, units]) => units.split(', ').map((unit) => [folded(unit), factor] as const)),
  );
}

const COUNT_UNITS = table([[1, COUNTED]]);
const BY_COLUMN: ReadonlyMap<string, ReadonlyMap<string, number>> = new Map([
  ['fruit_weight_g', table(GRAMS)],
  ['pollen_age_days', table(DAYS)],
]);

/** Whether a column's numbers have a unit of their own, so that another one changes them. */
export function hasUnits(column: string): boolean {
  return BY_COLUMN.has(column);
}

/**
 * How many of a column's own unit (grams, days, things) one of a written unit is; null where it is none of its units.
 *
 * @example unitFactor('pollen_age_days', 'weeks') // 7
 */
export function unitFactor(column: string, unit: string): number | null {
  return (BY_COLUMN.get(column) ?? COUNT_UNITS).get(folded(unit)) ?? null;
}
