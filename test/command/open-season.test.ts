import { describe, expect, it } from 'vitest';
import { Failure } from '../../lib/command/failure.ts';
import { orFail, statusOf } from '../../lib/command/open-season.ts';
import type { Problem } from '../../lib/season/season.ts';
import { crossesFile, seasonOf } from '../season-of.ts';
import { CLEAN, refusal, run } from './memory-world.ts';

const found = (...severities: Problem['severity'][]) =>
  seasonOf([], {
    files: [
      crossesFile(
        3,
        3,
        severities.map((severity) => ({
          ...{ file: 'a.csv', line: 2, row: 2, severity, column: null, value: null },
          ...{ code: 'column-unknown', details: {} },
        })),
      ),
    ],
  });

describe('statusOf', () => {
  // The contract, section 2: errors or warnings are 1, what is only noticed is 0.
  it('is 1 for errors and warnings, 0 for notices', () => {
    expect(statusOf(found())).toBe(0);
    expect(statusOf(found('notice', 'notice'))).toBe(0);
    expect(statusOf(found('notice', 'warning'))).toBe(1);
    expect(statusOf(found('error'))).toBe(1);
  });
});

describe('orFail', () => {
  it('hands on what was read, and names the file that the system refused', () => {
    expect(orFail('file-unreadable', 'a.csv', () => 7)).toBe(7);
    const refused = () =>
      orFail('file-unreadable', 'a.csv', () => {
        throw refusal('EACCES');
      });
    expect(refused).toThrow(Failure);
    expect(refused).toThrow(
      expect.objectContaining({ code: 'file-unreadable', details: { file: 'a.csv', cause: 'EACCES' } }),
    );
  });
});

describe('the files of a command line', () => {
  const vials = 'vial,pollen_parent,collected,storage\nF-01,Salt Moon,2024-07-17,frozen\n';

  it('are told by their columns, in any order, with or without their option', async () => {
    const files = { 'a.csv': vials, 'b.csv': CLEAN };
    const kinds = async (...words: string[]) => {
      const { out } = await run(['check', ...words, '--json'], { files });
      return (JSON.parse(out) as { files: { kind: string }[] }).files.map(({ kind }) => kind);
    };
    expect(await kinds('a.csv', 'b.csv')).toEqual(['vials', 'crosses']);
    expect(await kinds('b.csv', '--vials', 'a.csv')).toEqual(['crosses', 'vials']);
  });

  it('cannot be checked as vials where they are crosses', async () => {
    const { status, out } = await run(['check', '--vials', 'b.csv', 'a.csv', '--json'], {
      files: { 'a.csv': vials, 'b.csv': CLEAN },
    });
    expect(status).toBe(1);
    expect(out).toContain('kind-differs');
  });
});
