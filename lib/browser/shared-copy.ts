import type { AnalyseOptions } from '../analyse.ts';
import { codedAnalysis, codedFrom } from '../command/coded-season.ts';
import { Failure } from '../command/failure.ts';
import { findLeaks } from '../notebook/leaks.ts';
import type { CompiledNotebook } from '../notebook/run.ts';
import { type CodeKey, codeKeyText, newCodeKey, readCodeKey } from '../season/code-key.ts';
import type { Season } from '../season/season.ts';
import type { SeasonText } from '../season/write-season.ts';
import { FILE_NAMES } from '../words/told/file-names.ts';
import type { Job, Sharing } from './messages.ts';
import { ownTextOf } from './own-pieces.ts';
import { drawnReport } from './report-text.ts';

/** A coded copy, and the key that turns its codes into names again. */
export interface SharedCopy {
  readonly files: readonly SeasonText[];
  readonly key: SeasonText;
}

function keyOf({ key, secret }: Sharing): CodeKey {
  if (key === null) return newCodeKey(secret);
  const read = readCodeKey(key.text);
  if (read === null) throw new Failure('key-not-ours', { file: key.name });
  return read;
}

/**
 * The coded copy that the command's `--anonymous` makes of the same season: the report, and at the level of codes the
 * files of crosses, vials and flowers. It is searched for what is the grower's own before it is given away.
 *
 * @param own the grower's season
 * @param options of the grower's own analysis
 * @throws Failure where the key is none, the dates cannot be moved, or anything of the grower's own was found
 */
export async function sharedCopy(
  own: Season,
  options: AnalyseOptions,
  sharing: Sharing,
  read: Job['read'],
  notebook: CompiledNotebook,
): Promise<SharedCopy> {
  const keyName = sharing.key?.name ?? FILE_NAMES.key;
  const { map, same = [], storage = [], settings, asOf } = read;
  const said = {
    level: sharing.level,
    map: map.map(([header, column]) => ({ header, column })),
    same,
    storage: storage.map(([word, method]) => ({ word, method })),
    ...(settings === undefined ? {} : { settings }),
    ...(asOf === undefined ? {} : { asOf }),
    ...(options.useOn === undefined ? {} : { useOn: options.useOn }),
  };
  const coded = codedFrom(own, said, keyOf(sharing), keyName);
  const { text } = await drawnReport(notebook, codedAnalysis(own, coded, options));
  const report = { name: FILE_NAMES.codedReport, text };
  const files = sharing.level === 'codes' ? [report, ...coded.files] : [report];
  // A grower's file may have the name that follows "coded-".
  const ownText = [ownTextOf(sharing.ownPieces), ...coded.files.map(({ name }) => name)].join('\n');
  const leaks = findLeaks(files, coded.secrets, ownText);
  const [first] = leaks;
  if (first !== undefined) throw new Failure('leak-found', { ...first, more: leaks.length - 1 });
  return { files, key: { name: keyName, text: codeKeyText(coded.key) } };
}
