/** Names of files that the page for one's own season saves or makes: the same in every language, as the command's are. */

export const FILE_NAMES = {
  pasted: 'pasted.csv',
  flowers: 'flowers.csv',
  report: 'season-review.html',
  settings: 'settings.json',
  codedReport: 'coded-season-review.html',
  key: 'fruitodds-key.json',
} as const;

/** The season's crosses or vials as they were understood. */
export function cleanedName(kind: string): string {
  return `${kind}-clean.csv`;
}
