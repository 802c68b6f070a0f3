import { analyse } from '../analyse.ts';
import { sha256 } from '../season/sha256.ts';
import { optionsOf, problemNote } from './analyse.ts';
import { Failure } from './failure.ts';
import { filesJson } from './json.ts';
import { openCountableSeason, orFail, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import type { World } from './world.ts';

function refuseOverwriting({ files, vials, flowers }: CommandLine, output: string, world: World): void {
  const overwritten = [...files, ...vials, ...flowers].some(
    (path) => path !== '-' && world.same(path, output),
  );
  if (overwritten) throw new Failure('output-is-input', { file: output });
}

/** The command `report`: the season review of the files, written to one HTML file. */
export async function report(line: CommandLine, world: World): Promise<0 | 1> {
  const output = line.output!;
  refuseOverwriting(line, output, world);
  const season = openCountableSeason(line, world);
  const page = await world.render(season, analyse(season, optionsOf(line)));
  orFail('output-not-writable', output, () => world.write(output, page));
  if (line.json) {
    const bytes = new TextEncoder().encode(page);
    const written = { file: output, bytes: bytes.length, sha256: sha256(bytes) };
    world.print(`${JSON.stringify({ written, files: filesJson(season) }, null, 2)}\n`);
  } else {
    world.print(`Wrote ${output}.\n`);
  }
  world.warn(problemNote(season));
  return statusOf(season);
}
