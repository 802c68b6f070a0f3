import { expect, it } from 'vitest';
import { NO_SETTINGS } from '../../lib/browser/settings.ts';
import { flowerFields } from '../../lib/browser/shown-settings.ts';
import { markupOf } from '../../lib/notebook/html.ts';

it('has a field for each plant, with what was typed before, names escaped', () => {
  const plants = ['A', '"><img src=x>'];
  const markup = markupOf(flowerFields(plants, { ...NO_SETTINGS, expected: new Map([['A', '7']]) }));
  expect(markup.match(/<input/g)).toHaveLength(2);
  expect(markup).toContain('value="7"');
  expect(markup).not.toContain('<img');
});
