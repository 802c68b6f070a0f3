/** Golden drawings: a drawing must be the stored one, byte by byte; a differing one is saved beside it as `-changed`. */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = new URL('../golden/charts/', import.meta.url);

/**
 * Compares with the stored drawing: "unchanged", or where to look. Where it is missing or differs, what was drawn is
 * saved as `NAME-changed.svg`: look at it, then rename it over the stored one if it is right.
 */
export function golden(name: string, drawn: string): string {
  const path = (end: string) => fileURLToPath(new URL(`${name}${end}.svg`, folder));
  const stored = existsSync(path('')) ? readFileSync(path(''), 'utf8') : null;
  if (stored === `${drawn}\n`) {
    rmSync(path('-changed'), { force: true });
    return 'unchanged';
  }
  writeFileSync(path('-changed'), `${drawn}\n`);
  return `${stored === null ? 'new' : 'changed'}: look at test/golden/charts/${name}-changed.svg`;
}
