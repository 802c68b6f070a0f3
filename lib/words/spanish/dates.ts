/** Days in words: "3 de mayo de 2026". */

const MONTHS = [
  ...['enero', 'febrero', 'marzo', 'abril', 'mayo', 'junio', 'julio', 'agosto', 'septiembre', 'octubre'],
  ...['noviembre', 'diciembre'],
] as const;

/** A day as YYYY-MM-DD in words; anything else stays as it is. */
export function daySaid(iso: string): string {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(iso) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? iso : `${Number(day)} de ${name} de ${year}`;
}
