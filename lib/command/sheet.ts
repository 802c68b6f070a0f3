import { type Analysis, analyse } from '../analyse.ts';
import { crossingSheetCsv, sheetOf } from '../decisions/crossing-sheet.ts';
import type { MixName } from '../decisions/mix.ts';
import { mixOf } from '../decisions/mix-names.ts';
import type { Season } from '../season/season.ts';
import { sha256 } from '../season/sha256.ts';
import type { Words } from '../words/languages.ts';
import { notesOn } from './analyse.ts';
import { optionsOf } from './analysis-options.ts';
import { Failure } from './failure.ts';
import { filesJson } from './json.ts';
import { openCountableSeason, orFail, refuseOtherKind, refuseOverwriting, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import type { World } from './world.ts';
import { standing } from './write-out.ts';

/** A sheet may have been filled in: whatever stands at its name is kept. */
function refuseStanding(output: string, world: World): void {
  const text = standing(output, world);
  if (text !== null && text.trim() !== '') throw new Failure('sheet-is-there', { file: output });
}

/** The sheet as its file: a page to print, or a crosses file to fill in where the name ends in .csv. */
async function sheetText(
  season: Season,
  analysis: Analysis,
  { output = '', mix = 'balanced' }: Pick<CommandLine, 'output'> & { readonly mix?: MixName },
  world: World,
  words: Words,
): Promise<string> {
  const chosen = mixOf(analysis.plan?.frontier ?? [], mix);
  if (chosen === undefined) {
    throw new Failure('no-plan', { cause: words.planAnswer(analysis) }, filesJson(season, words));
  }
  const flowers = sheetOf(season, chosen, analysis.provenance.options.useOn);
  const unmet = words.unmetSaid(flowers);
  if (unmet !== '') world.warn(`${unmet}\n`);
  if (!/\.csv$/i.test(output)) return world.renderSheet(season, analysis, mix, words.languageWords.code);
  return crossingSheetCsv(flowers, words.sheetNote);
}

/** The command `sheet`: a mix of next season's plan, flower by flower, as a page or as a crosses file. */
export async function sheet(line: CommandLine, world: World, words: Words): Promise<0 | 1> {
  const output = line.output!;
  refuseOverwriting(line, output, world);
  refuseOtherKind(line, output);
  orFail('output-not-writable', output, () => world.refuseUnwritable(output));
  refuseStanding(output, world);
  const season = openCountableSeason(line, world, words);
  world.note(`${words.commandWords.working}\n`);
  const text = await sheetText(season, analyse(season, optionsOf(line, season)), line, world, words);
  orFail('output-not-writable', output, () => world.write(output, text));
  if (line.json) {
    const bytes = new TextEncoder().encode(text);
    const written = { file: output, bytes: bytes.length, sha256: sha256(bytes) };
    world.print(`${JSON.stringify({ written, files: filesJson(season, words) }, null, 2)}\n`);
  } else {
    world.print(`${words.commandWords.wrote(output)}\n`);
  }
  world.warn(notesOn(line, season, words));
  return statusOf(season);
}
