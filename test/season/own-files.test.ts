import { describe, expect, it } from 'vitest';
import { EXPLAINED_COLUMNS, FINDINGS_COLUMNS, ownFile } from '../../lib/season/own-files.ts';

// What the program writes itself is told in test/command/own-output.test.ts from what it really wrote.
describe('ownFile', () => {
  it('knows a list of findings by all its headers, whatever parts them', () => {
    const header = FINDINGS_COLUMNS.join(',');
    expect(ownFile(`${header}\r\nc.csv,error,2`)).toBe('findings');
    expect(ownFile(`\ufeff${header.replaceAll(',', ';')}\n`)).toBe('findings');
    expect(ownFile(FINDINGS_COLUMNS.map((name) => `"${name}"`).join('\t'))).toBe('findings');
    for (const columns of Object.values(EXPLAINED_COLUMNS))
      expect(ownFile(columns.join(';'))).toBe('columns');
  });

  it('takes no list of flowers for one, nor one with a column more', () => {
    for (const text of [
      'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome\n',
      `${FINDINGS_COLUMNS.join(',')},outcome\n`,
      FINDINGS_COLUMNS.slice(1).join(','),
      'file\n',
      '',
      '{"profile": "tabular-data-package", "name": "birds"}',
      '{"provenance": "Ivo"}',
    ])
      expect(ownFile(text), text).toBeNull();
  });

  it('knows descriptions, results and keys by how they begin', () => {
    expect(ownFile('{\n  "profile": "tabular-data-package",\n  "name": "pollination-season",\n')).toBe(
      'description',
    );
    expect(ownFile('{"key":"fruitodds coded copy: keep this file to yourself"}')).toBe('key');
    expect(ownFile('{ "provenance": { "version": "0.1.0" } }')).toBe('results');
    expect(ownFile('{\n  "files": [\n    {\n      "file": "c.csv",\n      "kind": "crosses"')).toBe(
      'results',
    );
  });
});
