/** Tage in Worten: „3. Mai 2026“. */

const MONTHS = [
  ...['Januar', 'Februar', 'März', 'April', 'Mai', 'Juni', 'Juli', 'August', 'September', 'Oktober'],
  ...['November', 'Dezember'],
] as const;

/** Ein Tag als JJJJ-MM-TT in Worten; anderes bleibt, wie es ist. */
export function daySaid(iso: string): string {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(iso) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? iso : `${Number(day)}. ${name} ${year}`;
}
