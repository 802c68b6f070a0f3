import { describe, expect, it } from 'vitest';
import { Failure } from '../../lib/command/failure.ts';
import { valuesOf } from '../../lib/command/option-words.ts';

const RULES = [
  { name: 'map', value: 'X', repeatable: true as const },
  { name: 'level', value: 'X' },
  { name: 'json' },
];

describe('valuesOf', () => {
  it('keeps values by option and the other words in order', () => {
    const { values, words } = valuesOf(['check', '--map', 'a=b', 'x.csv', '--map=c=d', '--json'], RULES);
    expect([...values]).toEqual([
      ['map', ['a=b', 'c=d']],
      ['json', ['']],
    ]);
    expect(words).toEqual(['check', 'x.csv']);
  });

  it.each([[['--levle', '1']], [['--level']], [['--json=1']], [['--level', '1', '--level', '2']]])(
    'refuses %j',
    (argv) => {
      expect(() => valuesOf(argv, RULES)).toThrow(Failure);
    },
  );
});
