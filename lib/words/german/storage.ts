/** Wie Arten der Lagerung heißen; der Fall steht dabei, weil der Pollen sich beugt. */

type Case = 'nominative' | 'dative' | 'accusative';

const LABELS: ReadonlyMap<string, string> = new Map([
  ['fresh', 'frisch'],
  ['room', 'Zimmertemperatur'],
  ['refrigerated', 'gekühlt'],
  ['frozen', 'gefroren'],
]);

const STEMS: ReadonlyMap<string, string> = new Map([
  ['fresh', 'frisch'],
  ['room', 'bei Zimmertemperatur gelagert'],
  ['refrigerated', 'gekühlt'],
  ['frozen', 'gefroren'],
]);

const ENDINGS: Readonly<Record<Case, string>> = { nominative: 'er', dative: 'em', accusative: 'en' };

export function storageLabel(storage: string): string {
  return LABELS.get(storage) ?? storage;
}

/** „gefrorener Pollen“; im Dativ „gefrorenem Pollen“, im Akkusativ „gefrorenen Pollen“. */
export function pollenOf(storage: string, grammaticalCase: Case = 'nominative'): string {
  const stem = STEMS.get(storage);
  return stem === undefined
    ? `Pollen der Lagerung „${storage}“`
    : `${stem}${ENDINGS[grammaticalCase]} Pollen`;
}

/** „mit gefrorenem Pollen“. */
export function withPollen(storage: string): string {
  return `mit ${pollenOf(storage, 'dative')}`;
}
