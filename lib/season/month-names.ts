/** The names of months in four languages, as growers write them. */

const MONTHS: readonly string[] = [
  'january, januar, jänner, enero, janvier',
  'february, februar, feber, febrero, février',
  'march, märz, maerz, mrz, marzo, mars',
  'april, abril, avril',
  'may, mai, mayo',
  'june, juni, junio, juin',
  'july, juli, julio, juillet',
  'august, agosto, août',
  'september, septiembre, setiembre, septembre',
  'october, oktober, octubre, octobre',
  'november, noviembre, novembre',
  'december, dezember, diciembre, décembre',
];

const SHORTEST = 3;

/** A name as it is compared: lower case, without accents. */
function folded(name: string): string {
  return name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}

/** From every beginning of a name to its month, 0 where two months share it ("jui" is June or July in French). */
const BEGINNINGS = beginnings();

function beginnings(): ReadonlyMap<string, number> {
  const table = new Map<string, number>();
  MONTHS.forEach((names, index) => {
    for (const name of names.split(', ').map(folded)) {
      for (let length = SHORTEST; length <= name.length; length++) {
        const beginning = name.slice(0, length);
        const other = table.get(beginning);
        table.set(beginning, other === undefined || other === index + 1 ? index + 1 : 0);
      }
    }
  });
  return table;
}

/**
 * The month that a name or its beginning (3 letters and up, with or without accents) means in English, German,
 * Spanish or French: 1 to 12, or 0 where it means none or more than one.
 *
 * @example monthNumber('Okt') // 10
 */
export function monthNumber(name: string): number {
  return BEGINNINGS.get(folded(name)) ?? 0;
}
