import type { Season } from '../season/season.ts';
import type { Words } from '../words/languages.ts';
import { checkCsv } from './check-csv.ts';
import { Failure } from './failure.ts';
import { filesJson } from './json.ts';
import { openSeason, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import { codedParts, sealCopy } from './shared-season.ts';
import { cleanFiles } from './site-downloads.ts';
import type { World } from './world.ts';
import { writeFolder } from './write-out.ts';

/** What the cleaned files do not hold, so that nothing goes missing unsaid. */
function notWritten({ files, crosses, vials, flowers }: Season, { commandWords }: Words): string {
  const read = files.reduce((sum, { rows }) => sum + rows, 0);
  const left = read - crosses.length - vials.length - flowers.length;
  const unknown = files.flatMap(({ columns, kind }) =>
    kind === 'unknown' ? [] : columns.filter(({ column, header }) => column === null && header !== ''),
  ).length;
  const said = commandWords.notWritten(left, unknown);
  return said === '' ? '' : `${said}\n`;
}

/** The same under codes: no list of faults, whose cells are the grower's own. */
async function cleanCoded(line: CommandLine, season: Season, world: World, words: Words): Promise<0 | 1> {
  const folder = line.output!;
  const coded = codedParts(line, season, world);
  if (coded.level === 'summary') throw new Failure('summary-has-no-rows');
  await sealCopy({ coded }, [], world, words);
  writeFolder(folder, coded.files, world);
  const names = coded.files.map(({ name }) => name);
  if (line.json) world.print(`${JSON.stringify({ folder, written: names, files: [] }, null, 2)}\n`);
  else world.print(`${words.commandWords.wroteTo(folder, names)}\n`);
  return statusOf(season);
}

/** The command `clean`: the season as it was understood, in clean files with a description, beside what was found. */
export async function clean(line: CommandLine, world: World, words: Words): Promise<0 | 1> {
  const folder = line.output!;
  const season = openSeason(line, world, words);
  if (line.anonymous !== undefined) return cleanCoded(line, season, world, words);
  const texts = cleanFiles(season, words);
  const written = [...texts, { name: 'problems.csv', text: checkCsv(season, words) }];
  writeFolder(folder, written, world);
  const rows = season.crosses.length + season.vials.length + season.flowers.length;
  const names = written.map(({ name }) => name);
  if (line.json) {
    world.print(`${JSON.stringify({ folder, written: names, files: filesJson(season, words) }, null, 2)}\n`);
  } else {
    const wrote = words.commandWords.wroteRows(rows, folder, names);
    world.print(`${wrote}\n${notWritten(season, words)}`);
  }
  return statusOf(season);
}
