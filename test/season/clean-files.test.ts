import { describe, expect, it } from 'vitest';
import writeExcelFile from 'write-excel-file/node';
import { readSeason } from '../../lib/season/read-season.ts';

/** The same three flowers as ten growers keep them: in four languages, their own words, dates and numbers. */
const FILES: Readonly<Record<string, readonly string[]>> = {
  'our own names': [
    'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,outcome,fruit_weight_g',
    'T1,2025-06-25,Zoë,Ivo,fresh,,fruit,12.5',
    'T2,2025-06-25,Ivo,Zoë,frozen,2025-03-01,none,',
    'T3,2025-06-26,Zoë,Ivo,refrigerated,2025-06-20,dropped,',
  ],
  English: [
    'Tag,Pollinated on,Mother,Father,Kept in,Pollen from,Result,Fruit weight',
    'T1,25 June 2025,Zoë,Ivo,fresh,,set,12.5 g',
    'T2,25 June 2025,Ivo,Zoë,deep freeze,1 March 2025,failed to set,',
    'T3,26 June 2025,Zoë,Ivo,fridge,20 June 2025,dropped off,',
  ],
  American: [
    'Tag no.,Date pollinated,Seed parent,Pollen donor,Storage,Date collected,Outcome,Weight (g)',
    'T1,6/25/2025,Zoë,Ivo,Fresh,,Yes,12.5',
    'T2,6/25/2025,Ivo,Zoë,Freezer,3/1/2025,No,',
    'T3,6/26/2025,Zoë,Ivo,Fridge,6/20/2025,Aborted,',
  ],
  German: [
    'Etikett;bestäubt am;Mutter;Vater;Lagerung;gesammelt am;Ergebnis;Fruchtgewicht',
    'T1;25.06.2025;Zoë;Ivo;frisch;;Frucht;12,5 g',
    'T2;25.06.2025;Ivo;Zoë;tiefgekühlt;01.03.2025;nichts;',
    'T3;26.06.2025;Zoë;Ivo;Kühlschrank;20.06.2025;abgefallen;',
  ],
  Spanish: [
    'etiqueta;fecha de polinización;madre;padre;almacenamiento;fecha de recolección;resultado;peso',
    'T1;25 de junio de 2025;Zoë;Ivo;fresco;;cuajó;12,5 gramos',
    'T2;25 de junio de 2025;Ivo;Zoë;congelado;1 de marzo de 2025;nada;',
    'T3;26 de junio de 2025;Zoë;Ivo;nevera;20 de junio de 2025;caído;',
  ],
  French: [
    'étiquette\tpollinisé le\tmère\tpère\tstockage\trécolté le\trésultat\tpoids',
    'T1\t25 juin 2025\tZoë\tIvo\tfrais\t\tnoué\t12,5',
    'T2\t25 juin 2025\tIvo\tZoë\tcongélateur\t1er mars 2025\trien\t',
    'T3\t26 juin 2025\tZoë\tIvo\tfrigo\t20 juin 2025\ttombé\t',
  ],
};

const utf8 = (text: string) => new TextEncoder().encode(text);
const utf16 = (text: string) =>
  Uint8Array.from([...`\ufeff${text}`].flatMap((c) => [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8]));
const latin = (text: string) => Uint8Array.from([...text].map((c) => c.charCodeAt(0)));
const text = (name: string, end = '\n') => FILES[name].join(end);

/** What may be told of a file in which nothing is wrong: how it was understood. */
const UNDERSTOOD = [
  'column-guessed',
  'word-guessed',
  'date-order-decided',
  'date-order-from-neighbour',
  'encoding-guessed',
];

function read(bytes: Uint8Array) {
  const { crosses, files } = readSeason([{ name: 'x', bytes }]);
  return {
    flowers: crosses.map((c) => [
      c.crossId,
      c.pollinationDate,
      c.seedParent,
      c.storage,
      c.ageDays,
      c.outcome,
      c.fruitWeightGrams,
    ]),
    found: files[0].problems.filter(({ code }) => !UNDERSTOOD.includes(code)),
    severe: files[0].problems.filter(({ severity }) => severity !== 'notice'),
    all: files[0].problems,
  };
}

// 1 March to 25 June: 30 days left of March, 30, 31 and 25 days.
const FLOWERS = [
  ['T1', '2025-06-25', 'Zoë', 'fresh', 0, 'fruit', 12.5],
  ['T2', '2025-06-25', 'Ivo', 'frozen', 116, 'none', null],
  ['T3', '2025-06-26', 'Zoë', 'refrigerated', 6, 'dropped', null],
];

const CLEAN: readonly (readonly [string, () => Uint8Array | Promise<Uint8Array>])[] = [
  ['our own names', () => utf8(text('our own names'))],
  ['English', () => utf8(text('English'))],
  ['American, CRLF', () => utf8(text('American', '\r\n'))],
  ['German with a byte-order mark', () => utf8(`\ufeff${text('German', '\r\n')}`)],
  ['German in Windows-1252', () => latin(text('German'))],
  ['Spanish, old line ends', () => utf8(text('Spanish', '\r'))],
  ['French with tabs in UTF-16', () => utf16(text('French'))],
  ['French with pipes', () => utf8(text('French').replaceAll('\t', '|'))],
  [
    'everything quoted, blank rows behind',
    () =>
      utf8(
        `${FILES.English.map((l) =>
          l
            .split(',')
            .map((c) => `"${c}"`)
            .join(','),
        ).join('\n')}\n\n,,,,,,,\n`,
      ),
  ],
  [
    'a workbook',
    async () => {
      const [header, ...rows] = FILES['our own names'].map((line) => line.split(','));
      const cell = (value: string, i: number) => {
        if (value === '') return null;
        if (i === 1 || i === 5) return { value: new Date(value), type: Date, format: 'd mmm yyyy' };
        return i === 7 ? { value: Number(value), type: Number } : { value };
      };
      return new Uint8Array(
        await writeExcelFile([
          header.map((value) => ({ value })),
          ...rows.map((row) => row.map(cell)),
        ]).toBuffer(),
      );
    },
  ],
];

describe('ten clean files', () => {
  it.each(CLEAN)('%s: nothing is found, and the flowers are the same', async (_, bytes) => {
    const { flowers, found, severe } = read(await bytes());
    expect(found).toEqual([]);
    expect(severe).toEqual([]);
    expect(flowers).toEqual(FLOWERS);
  });

  it('in our own names give not even a notice, as text or as a workbook', async () => {
    for (const [name, bytes] of CLEAN)
      if (name === 'our own names' || name === 'a workbook') expect(read(await bytes()).all).toEqual([]);
  });
});
