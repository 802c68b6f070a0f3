import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as door from '../../lib/index.ts';

const page = readFileSync(new URL('../../reports/limitations.md', import.meta.url), 'utf8');

/** The page in each language, and the heading above its list of missed aims. */
const ASKED = [
  ['limitations.md', '## Which aims are missed?'],
  ['limitations.de.md', '## Welche Ziele sind verfehlt?'],
  ['limitations.es.md', '## ¿Qué metas no se alcanzan?'],
  ['limitations.fr.md', '## Quels buts sont manqués ?'],
] as const;

interface World {
  readonly world: string;
  readonly ranges: readonly { readonly key: string; readonly share: number }[];
}

// test/reference/simulation.json: seasons drawn from stated worlds, by `npm run simulate`.
const { worlds } = JSON.parse(
  readFileSync(new URL('../reference/simulation.json', import.meta.url), 'utf8'),
) as { worlds: readonly World[] };

/** How often in 100 the ranges of one kind held, by world. */
function held(key: string): ReadonlyMap<string, number> {
  return new Map(
    worlds.map(({ world, ranges }) => [
      world,
      Math.round(100 * ranges.find((range) => range.key === key)!.share),
    ]),
  );
}

describe('the page of limitations', () => {
  it('states how often ranges held as the simulation found', () => {
    const text = page.replace(/\s+/g, ' ');
    const vials = held('vials');
    expect([vials.get('no fading'), vials.get('strong fading')]).toSatisfy((shares: number[]) =>
      shares.every((share) => Math.abs(share - 90) <= 1),
    );
    expect(text).toContain(
      `for vials ${vials.get('matching')} times where the world is as assumed, 90 where`,
    );
    const pairs = [...held('pairs').values()];
    expect(text).toContain(`for pairs ${Math.min(...pairs)} to ${Math.max(...pairs)} times`);
    const most = [...held('pairs: most fertile of its season').values()];
    expect(text).toContain(`only ${Math.min(...most)} to ${Math.max(...most)} times`);
    const adjusted = held('adjusted');
    expect(adjusted.get('matching')).toBeGreaterThanOrEqual(93);
    expect(text).toContain(`difference ${adjusted.get('matching')} times`);
    expect(text).toContain(`${adjusted.get('strong fading')} where pollen fades much faster`);
  });

  it('tells of every aim that DEVELOPERS.md calls missed, and of none that is met', () => {
    const guide = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8').split('\n');
    const text = page.replace(/\s+/g, ' ');
    const told: readonly (readonly [row: string, said: string])[] = [
      ['| area, % of who knows all', 'The plan of next season’s flowers was to reach 95 in 100'],
      ['| Firth, 5,000 rows all different, against brglm2', 'was to be five times as fast as brglm2'],
      ['| crossed effects, 5,000 rows, 100 × 100 parents', 'were to be ten times as fast as lme4'],
      ["| the grower's model, 300 flowers", 'model of 300 flowers was to take half a second'],
      ['| `fruitodds report` of the demo season', 'was to take one and a half seconds from the shell'],
      ['| reading a file of 1,000,000 flowers', 'one and a half times what csv-parse takes'],
    ];
    for (const [start, said] of told) {
      const row = guide.find((line) => line.startsWith(start))!;
      expect(text.includes(said), `${start}: ${said}`).toBe(row.includes('missed'));
    }
    const missed = guide.filter((line) => line.startsWith('|') && line.includes('missed')).length;
    expect(missed).toBe(told.filter(([, said]) => text.includes(said)).length);
    // The last aim in the list is told from the simulation, not in a row of its own.
    for (const [name, heading] of ASKED) {
      const all = readFileSync(new URL(`../../reports/${name}`, import.meta.url), 'utf8');
      const list = all.split(heading)[1]!.split('\n## ')[0]!;
      expect(list.match(/^- /gm)?.length, name).toBe(missed + 1);
    }
    const area = Number(
      /\| ([\d.]+) ±/.exec(guide.find((line) => line.startsWith('| area, % of who knows all'))!)![1],
    );
    const stated = Number(/it reaches about (\d+)\./.exec(text)![1]);
    expect(Math.abs(area - stated)).toBeLessThan(1.5);
  });

  it('names functions that there are', () => {
    const names = [...page.matchAll(/`([a-z]\w+)`/g)].map(([, name]) => name!);
    expect(names.length).toBeGreaterThan(3);
    expect(names.filter((name) => !(name in door))).toEqual([]);
  });
});
