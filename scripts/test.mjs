// `npm test`: format and lint, types, what the tests need, then the tests. Last line: `N passed, N failed`.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findChromium, howToGetChromium } from './chromium.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const require = createRequire(import.meta.url);

/** Runs one of our programs with this Node, its output shown; whether it ended well. */
function runs(title, script, ...words) {
  console.log(`\n— ${title}`);
  const { status } = spawnSync(process.execPath, [script, ...words], { cwd: root, stdio: 'inherit' });
  if (status !== 0) console.error(`FAILED: ${title}`);
  return status === 0;
}

/** The program that a package names under `bin`. */
function program(packageName, name) {
  const path = require.resolve(`${packageName}/package.json`);
  const { bin } = JSON.parse(readFileSync(path, 'utf8'));
  return join(dirname(path), typeof bin === 'string' ? bin : bin[name]);
}

/** Runs vitest; null where it ended before it could count. A file that cannot even be loaded is one failure. */
function testRun() {
  const folder = mkdtempSync(join(tmpdir(), 'fruitodds-test-'));
  const file = join(folder, 'tests.json');
  try {
    const reporters = ['--reporter=dot', '--reporter=json', `--outputFile.json=${file}`];
    const ended = runs('tests', program('vitest', 'vitest'), 'run', ...reporters);
    const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(file, 'utf8'));
    const unloaded = testResults.filter(
      ({ status, assertionResults }) =>
        status === 'failed' && !assertionResults.some((assertion) => assertion.status === 'failed'),
    );
    const failed = numFailedTests + unloaded.length;
    const skipped = testResults.flatMap(({ name, assertionResults }) =>
      assertionResults
        .filter(({ status }) => status !== 'passed' && status !== 'failed')
        .map(({ fullName }) => `${relative(root, name).split(sep).join('/')}: ${fullName}`),
    );
    return { passed: numPassedTests, failed: failed === 0 && !ended ? 1 : failed, skipped };
  } catch (error) {
    console.error(error);
    return { passed: 0, failed: 1, skipped: [] };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const steps = [
  runs('format and lint', program('@biomejs/biome', 'biome'), 'check', '--error-on-warnings', '.'),
  runs('types', program('typescript', 'tsc'), '-p', 'tsconfig.json', '--noEmit'),
  runs('library, notebooks and site', join(root, 'scripts', 'reports.mjs')),
];
const tests = testRun();
const passed = steps.filter(Boolean).length + tests.passed;
const failed = steps.filter((step) => !step).length + tests.failed;

if (tests.skipped.length > 0) {
  console.log(`\nSkipped${findChromium() === null ? ', since no Chromium was found' : ''}:`);
  for (const name of tests.skipped) console.log(`  ${name}`);
  if (findChromium() === null) console.log(howToGetChromium);
}
console.log('');
console.log(
  `${passed} passed, ${failed} failed${tests.skipped.length > 0 ? `, ${tests.skipped.length} skipped` : ''}`,
);
process.exitCode = failed === 0 ? 0 : 1;
