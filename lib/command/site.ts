import { sha256 } from '../season/sha256.ts';
import type { SeasonText } from '../season/write-season.ts';
import type { Words } from '../words/languages.ts';
import { notesOn } from './analyse.ts';
import { Failure } from './failure.ts';
import { filesJson } from './json.ts';
import { orFail, statusOf } from './open-season.ts';
import type { CommandLine } from './options.ts';
import { openShared, type SharedSeason, sealCopy, shownAnalysis } from './shared-season.ts';
import { cleanFiles, siteDownloads } from './site-downloads.ts';
import type { RenderedSite, World } from './world.ts';

/** A folder is replaced as a whole: nothing that the site did not write, and nothing it reads, may stand in it. */
function refuseFolder({ files, vials, flowers }: CommandLine, folder: string, world: World): void {
  const inside = [...files, ...vials, ...flowers].find((path) => path !== '-' && world.within(path, folder));
  if (inside !== undefined) throw new Failure('input-in-site', { file: inside, folder });
  const obstacle = orFail('output-not-writable', folder, () => world.siteObstacle(folder));
  if (obstacle !== null)
    throw new Failure('site-not-ours', { folder: obstacle.path, foreign: obstacle.foreign });
}

/** The season's files to take along: of a coded copy its own, where single plants may be shown at all. */
function filesOf({ coded, own }: SharedSeason, words: Words): readonly SeasonText[] {
  if (coded === null) return cleanFiles(own, words);
  return coded.level === 'codes' ? coded.files : [];
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

function tell(
  { files, leftOut }: RenderedSite,
  folder: string,
  world: World,
  { commandWords: said }: Words,
): void {
  const bytes = files.reduce((sum, { text }) => sum + bytesOf(text).length, 0);
  world.print(`${said.wroteSite(files.length, bytes, folder)}
`);
  for (const page of leftOut) {
    world.warn(`${said.pageLeftOut(page.name, page.package)}
`);
  }
}

/** The command `site`: all pages about the files' season, written to a folder. */
export async function site(line: CommandLine, world: World, words: Words): Promise<0 | 1> {
  const folder = line.output!;
  refuseFolder(line, folder, world);
  world.note(`${words.commandWords.working}\n`);
  const shared = openShared(line, world, words);
  const parts = {
    downloads: siteDownloads(shownAnalysis(shared), filesOf(shared, words), words),
    otherPages: [],
    invented: false,
  };
  const rendered = await world.renderSite(shared.season, shared.analysis, parts, words.languageWords.code);
  await sealCopy(shared, rendered.files, world, words, rendered.constant);
  orFail('output-not-writable', folder, () => world.writeSite(folder, rendered.files));
  if (line.json) {
    const written = rendered.files.map(({ name, text }) => {
      const bytes = bytesOf(text);
      return { file: name, bytes: bytes.length, sha256: sha256(bytes) };
    });
    world.print(
      `${JSON.stringify({ folder, written, leftOut: rendered.leftOut, files: filesJson(shared.season, words) }, null, 2)}\n`,
    );
  } else tell(rendered, folder, world, words);
  world.warn(notesOn(line, shared.own, words));
  return statusOf(shared.own);
}
