/** How the ways of keeping pollen are called in Spanish. */

const LABELS: ReadonlyMap<string, string> = new Map([
  ['fresh', 'fresco'],
  ['room', 'temperatura ambiente'],
  ['refrigerated', 'refrigerado'],
  ['frozen', 'congelado'],
]);

export function storageLabel(storage: string): string {
  return LABELS.get(storage) ?? storage;
}

/** "polen congelado", "polen a temperatura ambiente". */
export function pollenOf(storage: string): string {
  if (storage === 'room') return 'polen a temperatura ambiente';
  return LABELS.has(storage) ? `polen ${storageLabel(storage)}` : `polen guardado como «${storage}»`;
}

/** "el polen congelado". */
export function thePollenOf(storage: string): string {
  return `el ${pollenOf(storage)}`;
}
