import { expect, it } from 'vitest';
import { Failure } from '../../lib/command/failure.ts';
import type { World } from '../../lib/command/world.ts';
import { standing, writeFolder } from '../../lib/command/write-out.ts';
import { refusal } from './memory-world.ts';

const refusing = (code: string): Pick<World, 'writeNewFolder'> => ({
  writeNewFolder: () => {
    throw refusal(code);
  },
});

it.each([
  ['ENOTEMPTY', 'folder-not-empty'],
  ['EACCES', 'output-not-writable'],
])('makes of %s the failure %s', (code, failure) => {
  const write = () => writeFolder('new', [], refusing(code) as World);
  expect(write).toThrow(Failure);
  expect(write).toThrow(expect.objectContaining({ code: failure }));
});

it('tells what stands at a path, and null where nothing can be read', () => {
  const world = (read: World['read']) => ({ read }) as World;
  expect(
    standing(
      'a',
      world(() => new TextEncoder().encode('é')),
    ),
  ).toBe('é');
  expect(
    standing(
      'a',
      world(() => {
        throw refusal('ENOENT');
      }),
    ),
  ).toBeNull();
});
