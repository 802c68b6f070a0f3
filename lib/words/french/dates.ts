/** Days in words: "14 septembre 2026", "1er juin 2026". */

const MONTHS = [
  ...['janvier', 'février', 'mars', 'avril', 'mai', 'juin', 'juillet', 'août', 'septembre', 'octobre'],
  ...['novembre', 'décembre'],
] as const;

/** A day as YYYY-MM-DD in words; anything else stays as it is. */
export function daySaid(iso: string): string {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(iso) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? iso : `${day === '01' ? '1er' : Number(day)} ${name} ${year}`;
}
