import { describe, expect, it } from 'vitest';
import { run } from './command/memory-world.ts';
import { schemaFaults } from './schema-validator.ts';

// Exit statuses and the shape of errors: the contract's, section 2.
describe('runFruitodds', () => {
  it.each([
    ['command-missing', []],
    ['command-unknown', ['chekc', 'a.csv']],
    ['file-not-expected', ['template', 'a.csv']],
    ['option-unknown', ['check', 'a.csv', '--levle', '0.9']],
    ['option-not-for-command', ['check', 'a.csv', '--anonymous']],
    ['key-without-anonymous', ['analyse', 'a.csv', '--key', 'k.json']],
    ['option-value', ['check', 'a.csv', '--level', '95']],
    ['file-missing', ['check']],
    ['file-unreadable', ['check', 'a.csv']],
    ['output-missing', ['report', 'a.csv']],
  ])('exits with 2 and %s for %j, as JSON where asked', async (code, argv) => {
    const { status, out, err } = await run([...argv, '--json']);
    expect(status).toBe(2);
    expect(schemaFaults('error', JSON.parse(out))).toEqual([]);
    expect(JSON.parse(out)).toMatchObject({ error: { code } });
    expect(err).toMatch(/^fruitodds: .+\n.+\n$/);
    expect((await run(argv)).out).toBe('');
  });
});
