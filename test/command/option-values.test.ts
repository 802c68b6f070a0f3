import { expect, it } from 'vitest';
import { Failure } from '../../lib/command/failure.ts';
import { given, headerMap, namesOfOne, share } from '../../lib/command/option-values.ts';

it('headerMap splits at the last =', () => {
  expect(headerMap('a = b = vial')).toEqual({ header: 'a = b', column: 'vial' });
});

it('namesOfOne needs two names', () => {
  expect(namesOfOne('A = B=C')).toEqual(['A', 'B', 'C']);
  expect(() => namesOfOne('A=')).toThrow(Failure);
});

it('given leaves out what is undefined', () => {
  expect(given({ a: 1, b: undefined })).toEqual({ a: 1 });
});

it('share names an example of what the option may be', () => {
  const read = () => share(new Map([['level', ['95']]]), 'level', '0.95');
  expect(read).toThrow(
    expect.objectContaining({ details: { option: '--level', value: '95', rule: 'share', allowed: '0.95' } }),
  );
});
