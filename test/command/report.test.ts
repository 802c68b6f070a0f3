import { describe, expect, it } from 'vitest';
import { LANGUAGES } from '../../lib/words/languages.ts';
import { schemaFaults } from '../schema-validator.ts';
import { CLEAN, type MemoryFiles, run } from './memory-world.ts';

const PAGE = '<!doctype html><title>Season</title>';
const reported = (options: readonly string[], more: Omit<MemoryFiles, 'files'> = {}) =>
  run(['report', 'crosses.csv', ...options], {
    files: { 'crosses.csv': CLEAN },
    render: async () => PAGE,
    ...more,
  });

describe('report', () => {
  it('writes the page and says where', async () => {
    const { status, out, written } = await reported(['-o', 'out.html']);
    expect([status, out]).toEqual([0, 'Wrote out.html.\n']);
    expect([...written]).toEqual([['out.html', PAGE]]);
  });

  it('renders the season that it read and its analysis', async () => {
    let said = '';
    await reported(['-o', 'out.html', '--level', '0.8'], {
      render: async (season, analysis) => {
        said = `${season.crosses.length} crosses at ${analysis.provenance.options.level}`;
        return PAGE;
      },
    });
    expect(said).toBe('3 crosses at 0.8');
  });

  // SHA-256 of the page by sha256sum of GNU coreutils 9.1.
  it('names the page with its digest as JSON', async () => {
    const { out } = await reported(['-o', 'out.html', '--json']);
    expect(schemaFaults('report', JSON.parse(out))).toEqual([]);
    expect(JSON.parse(out)).toMatchObject({
      written: {
        file: 'out.html',
        bytes: 36,
        sha256: '45229ac5d41d937345f3d7ad1e1b03d3ffcf8c109e7fbb3ea969ce9f91d402d9',
      },
    });
  });

  it.each(['ENOENT', 'EACCES', 'EISDIR', 'ENOSPC'])(
    'exits with 2 where the system refuses with %s',
    async (refuses) => {
      const { status, out, err } = await reported(['-o', 'no/out.html', '--json'], { refuses });
      expect(status).toBe(2);
      expect(JSON.parse(out)).toMatchObject({ error: { code: 'output-not-writable' } });
      expect(err).toContain('no/out.html can’t be written');
    },
  );

  it('tells before it works where it could not write', async () => {
    const { noted, out } = await reported(['-o', 'no/out.html'], { refuses: 'ENOENT' });
    expect([noted, out]).toEqual([[], '']);
    expect((await reported(['-o', 'out.html'])).noted).toEqual(['Working…\n']);
  });

  it.each(LANGUAGES.map((language) => [language]))(
    'says in %s that an answer is too long for one text, without blaming itself',
    async (language) => {
      // No text can have 2^30 letters: V8's own limit is below that on every machine.
      const render = async () => 'x'.repeat(2 ** 30);
      const { status, out, err } = await reported(['-o', 'out.html', '--json', '--language', language], {
        render,
      });
      expect([status, JSON.parse(out).error.code]).toEqual([2, 'answer-too-long']);
      expect(err).toContain('--json');
    },
  );

  it('replaces an older report, and no other file', async () => {
    const onto = (text: string) =>
      run(['report', 'crosses.csv', '-o', 'old'], {
        files: { 'crosses.csv': CLEAN, old: text },
        render: async () => PAGE,
      });
    expect((await onto('<!doctype html><title>Old</title>')).written.get('old')).toBe(PAGE);
    expect((await onto('')).written.get('old')).toBe(PAGE);
    const refused = await onto('vial,collected\n');
    expect([refused.status, refused.written.size]).toEqual([2, 0]);
    expect(refused.err).toContain('old is there already and is no report');
  });

  it('does not overwrite a file that it reads', async () => {
    const { status, err, written } = await reported(['-o', 'crosses.csv']);
    expect([status, written.size]).toEqual([2, 0]);
    expect(err).toContain('crosses.csv is one of the files to be read');
  });

  it('writes nothing where nothing can be counted', async () => {
    const { status, written } = await run(['report', 'crosses.csv', '-o', 'out.html'], {
      files: { 'crosses.csv': '' },
    });
    expect([status, written.size]).toEqual([2, 0]);
  });

  it('calls a fault of the program one, without a trace', async () => {
    const { status, out, err } = await reported(['-o', 'out.html', '--json'], {
      render: async () => {
        throw new TypeError('x is not a function');
      },
    });
    expect(status).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ error: { code: 'internal-fault' } });
    expect(err).toContain('x is not a function');
    expect(err).not.toMatch(/\bat \S+:\d+/);
  });
});
