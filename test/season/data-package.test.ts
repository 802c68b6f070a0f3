import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
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
});
