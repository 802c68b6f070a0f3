import { describe, expect, it } from 'vitest';
import { checkCsv } from '../../lib/command/check-csv.ts';
import { checkText } from '../../lib/command/check-text.ts';
import { filesJson } from '../../lib/command/json.ts';
import { readSeason } from '../../lib/season/read-season.ts';

/** Windows-1252, whose letters of these names are those of ISO 8859-1. */
const latin = (text: string) => Uint8Array.from([...text].map((c) => c.charCodeAt(0)));

function seasonOf(mothers: readonly string[], note = '') {
  const rows = mothers.map((mother, i) => `T${i};2025-06-01;${mother};Ivo;frisch;Frucht;${note}`);
  const text = ['Etikett;bestäubt am;Mutter;Vater;Lagerung;Ergebnis;Bemerkung', ...rows].join('\r\n');
  return readSeason([{ name: 'x.csv', bytes: latin(text) }]);
}

describe('otherLetters', () => {
  it('shows every distinct name once, before headers and notes, in text, CSV and JSON', () => {
    const season = seasonOf(['Zoë', 'Königin', 'Zoë', 'Selma', 'Señora'], 'spät');
    const list = '"Zoë", "Königin", "Señora", "bestäubt am", "spät"';
    const [{ problems }] = season.files;
    expect(problems[0]).toMatchObject({ code: 'encoding-guessed', value: 'Zoë', details: { more: 0 } });
    const csv = checkCsv(season).replaceAll('""', '"');
    const json = filesJson(season)[0]!.problems[0]!.message;
    for (const said of [checkText(season), csv, json]) expect(said).toContain(`${list}.`);
  });

  it('shows twenty-five and counts the rest', () => {
    const many = Array.from({ length: 40 }, (_, i) => `Ä${i}`);
    const [problem] = filesJson(seasonOf(many))[0]!.problems;
    expect(problem!.message).toContain('"Ä0", "Ä1", ');
    expect(problem!.message).toMatch(/"Ä24" and 16 more\.$/);
  });
});
