import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import { writeSeason } from '../../lib/season/write-season.ts';
import { seasonOf } from '../season-of.ts';

describe('the data package', () => {
  // The profile tabular-data-package of Frictionless Data, as the npm package datapackage 1.1.10 (MIT) publishes it.
  // It is draft 04, of which it uses nothing that later drafts read otherwise.
  const profile = JSON.parse(
    readFileSync(new URL('../reference/tabular-data-package.json', import.meta.url), 'utf8'),
  );
  const { $schema: _, ...schema } = profile;
  const validate = new Ajv({ strict: false, validateFormats: false, allErrors: true }).compile(schema);
  const season = seasonOf([{}], {
    vials: [
      {
        ...{
          file: 'v',
          line: 2,
          row: 2,
          vial: 'F-1',
          pollenParent: 'A',
          collected: '2025-01-01',
          storage: 'frozen',
        },
        ...{ dosesLeft: null, thaws: null, note: null },
      },
    ],
  });
  const described = () => JSON.parse(writeSeason(season).at(-1)!.text);

  it('keeps to the published profile, which refuses a field of no known type', () => {
    validate(described());
    expect(validate.errors).toBeNull();
    const spoilt = described();
    spoilt.resources[0].schema.fields[0].type = 'tag';
    expect(validate(spoilt)).toBe(false);
  });

  it('describes every column of every file, in its order, and says where a description is given', () => {
    const files = writeSeason(season, { description: 'A season.', column: (column) => `about ${column}` });
    const json = JSON.parse(files.at(-1)!.text);
    expect(json.description).toBe('A season.');
    for (const [i, resource] of json.resources.entries()) {
      const header = files[i]!.text.slice(1).split('\r\n')[0]!.split(',');
      expect(resource.schema.fields.map((field: { name: string }) => field.name)).toEqual(header);
      expect(resource.schema.fields[0].description).toBe(`about ${header[0]}`);
      expect(resource.bytes).toBe(Buffer.byteLength(files[i]!.text));
    }
  });

  it('is kept to by every cell of the demo season: types, needed cells, words, keys', () => {
    const demo = ['crosses.csv', 'vials.csv', 'flowers.csv'].map((name) => ({
      name,
      bytes: readFileSync(new URL(`../../data-demo/${name}`, import.meta.url)),
    }));
    const files = writeSeason(readSeason(demo));
    const { resources } = JSON.parse(files.at(-1)!.text);
    expect(resources).toHaveLength(3);
    // Lexical forms of the types: Table Schema, version 1 (Frictionless Data).
    const forms: Readonly<Record<string, RegExp>> = {
      ...{ string: /^/, date: /^\d{4}-\d\d-\d\d$/, integer: /^-?\d+$/, number: /^-?\d+(?:\.\d+)?$/ },
      boolean: /^(?:yes|no)$/,
    };
    for (const [i, { schema, dialect, path }] of resources.entries()) {
      const rows: Record<string, string>[] = parse(files[i]!.text, {
        bom: true,
        columns: true,
        delimiter: dialect.delimiter,
      });
      expect(files[i]!.name).toBe(path);
      for (const { name, type, constraints = {} } of schema.fields) {
        const cells = rows.map((row) => row[name]!);
        const filled = cells.filter((cell) => cell !== '');
        if (constraints.required) expect(filled).toHaveLength(cells.length);
        if (name === schema.primaryKey) expect(new Set(cells).size).toBe(cells.length);
        const wrong = filled.filter(
          (cell) =>
            !forms[type]!.test(cell) ||
            (constraints.enum && !constraints.enum.includes(cell)) ||
            (constraints.minimum !== undefined && Number(cell) < constraints.minimum),
        );
        expect([name, wrong]).toEqual([name, []]);
      }
    }
  });
});
