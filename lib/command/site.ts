import { analyse } from '../analyse.ts';
import { sha256 } from '../season/sha256.ts';
import { fileSize } from '../words/file-size.ts';
import { counted } from '../words/numbers.ts';
import { optionsOf, problemNote } from './analyse.ts';
import { Failure } from './failure.ts';
import { filesJson } from './json.ts';
import { openCountableSeason, orFail, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import { siteDownloads } from './site-downloads.ts';
import type { RenderedSite, World } from './world.ts';

/** A folder is replaced as a whole: nothing that the site did not write, and nothing it reads, may stand in it. */
function refuseFolder({ files, vials, flowers }: CommandLine, folder: string, world: World): void {
  const inside = [...files, ...vials, ...flowers].find((path) => path !== '-' && world.within(path, folder));
  if (inside !== undefined) throw new Failure('input-in-site', { file: inside, folder });
  const obstacle = orFail('output-not-writable', folder, () => world.siteObstacle(folder));
  if (obstacle !== null)
    throw new Failure('site-not-ours', { folder: obstacle.path, foreign: obstacle.foreign });
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

function tell({ files, leftOut }: RenderedSite, folder: string, world: World): void {
  const bytes = files.reduce((sum, { text }) => sum + bytesOf(text).length, 0);
  world.print(
    `Wrote ${counted(files.length, 'file')} (${fileSize(bytes)}) to ${folder}: open index.html in it.\n`,
  );
  for (const page of leftOut) {
    world.warn(
      `fruitodds: the page ${page.name} was left out, since the package ${page.package} is not installed.\n`,
    );
  }
}

/** The command `site`: all pages about the files' season, written to a folder. */
export async function site(line: CommandLine, world: World): Promise<0 | 1> {
  const folder = line.output!;
  refuseFolder(line, folder, world);
  const season = openCountableSeason(line, world);
  const analysis = analyse(season, optionsOf(line, season));
  const rendered = await world.renderSite(season, analysis, {
    downloads: siteDownloads(analysis),
    otherPages: [],
    invented: false,
  });
  orFail('output-not-writable', folder, () => world.writeSite(folder, rendered.files));
  if (line.json) {
    const written = rendered.files.map(({ name, text }) => {
      const bytes = bytesOf(text);
      return { file: name, bytes: bytes.length, sha256: sha256(bytes) };
    });
    world.print(
      `${JSON.stringify({ folder, written, leftOut: rendered.leftOut, files: filesJson(season) }, null, 2)}\n`,
    );
  } else tell(rendered, folder, world);
  world.warn(problemNote(season));
  return statusOf(season);
}
