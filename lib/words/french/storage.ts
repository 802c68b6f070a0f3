/** Methods of storing pollen as French says them. */

const LABELS: ReadonlyMap<string, readonly [label: string, pollen: string]> = new Map([
  ['fresh', ['frais', 'pollen frais']],
  ['room', ['température ambiante', 'pollen gardé à température ambiante']],
  ['refrigerated', ['réfrigéré', 'pollen réfrigéré']],
  ['frozen', ['congelé', 'pollen congelé']],
]);

/** The method alone, as a label. */
export function storageLabel(storage: string): string {
  return LABELS.get(storage)?.[0] ?? storage;
}

/** The pollen that was kept so, without an article; always masculine singular. */
export function pollenOf(storage: string): string {
  return LABELS.get(storage)?.[1] ?? `pollen gardé selon « ${storage} »`;
}
