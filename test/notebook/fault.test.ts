import { expect, it } from 'vitest';
import { faultLine, NotebookError } from '../../lib/notebook/fault.ts';

const fault = { file: 'reports/a.md', line: 3, column: 14, message: 'what is wrong' };

it('names file, line and column in the form that editors follow', () => {
  expect(faultLine(fault)).toBe('reports/a.md:3:14: what is wrong');
});

it('says every fault, one a line', () => {
  expect(new NotebookError([fault, { ...fault, line: 9 }]).message).toBe(
    'reports/a.md:3:14: what is wrong\nreports/a.md:9:14: what is wrong',
  );
});
