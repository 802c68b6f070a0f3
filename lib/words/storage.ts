/** How the ways of keeping pollen are called. */

const LABELS: ReadonlyMap<string, string> = new Map([
  ['fresh', 'fresh'],
  ['room', 'room temperature'],
  ['refrigerated', 'refrigerated'],
  ['frozen', 'frozen'],
]);

/**
 * A storage method as a short label, the grower's own word as it stands.
 *
 * @example storageLabel('room') // 'room temperature'
 */
export function storageLabel(storage: string): string {
  return LABELS.get(storage) ?? storage;
}

/**
 * The pollen of a method within a sentence: "frozen pollen", "pollen kept at room temperature".
 *
 * @example pollenOf('silica') // 'pollen stored as “silica”'
 */
export function pollenOf(storage: string): string {
  if (storage === 'room') return 'pollen kept at room temperature';
  return LABELS.has(storage) ? `${storage} pollen` : `pollen stored as “${storage}”`;
}
