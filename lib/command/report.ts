import { sha256 } from '../season/sha256.ts';
import type { Words } from '../words/languages.ts';
import { notesOn } from './analyse.ts';
import { Failure } from './failure.ts';
import { filesJson } from './json.ts';
import { orFail, refuseOtherKind, refuseOverwriting, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import { openShared, sealCopy } from './shared-season.ts';
import type { World } from './world.ts';
import { standing } from './write-out.ts';

/** A page may be replaced; any other file could be somebody's only copy. */
function refuseForeign(output: string, world: World): void {
  const text = standing(output, world);
  if (text === null || text.trim() === '' || /^\uFEFF?\s*<(!doctype html|html)/i.test(text)) return;
  throw new Failure('output-not-ours', { file: output });
}

/** The command `report`: the season review of the files, written to one HTML file. */
export async function report(line: CommandLine, world: World, words: Words): Promise<0 | 1> {
  const output = line.output!;
  refuseOverwriting(line, output, world);
  refuseOtherKind(line, output);
  orFail('output-not-writable', output, () => world.refuseUnwritable(output));
  refuseForeign(output, world);
  world.note(`${words.commandWords.working}\n`);
  const shared = openShared(line, world, words);
  const page = await world.render(shared.season, shared.analysis, words.languageWords.code);
  await sealCopy(shared, [{ name: 'report.html', text: page }], world, words);
  orFail('output-not-writable', output, () => world.write(output, page));
  if (line.json) {
    const bytes = new TextEncoder().encode(page);
    const written = { file: output, bytes: bytes.length, sha256: sha256(bytes) };
    world.print(`${JSON.stringify({ written, files: filesJson(shared.season, words) }, null, 2)}\n`);
  } else {
    world.print(`${words.commandWords.wrote(output)}\n`);
  }
  world.warn(notesOn(line, shared.own, words));
  return statusOf(shared.own);
}
