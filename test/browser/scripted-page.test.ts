import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { scriptedPage } from '../../lib/browser/scripted-page.ts';
import { html } from '../../lib/notebook/html.ts';

const page = scriptedPage({
  title: 'A <b> title',
  description: 'Text',
  language: 'de',
  body: html`<p>Body</p>`,
  style: 'p{color:red}',
  script: 'const a = "</script><!--<SCRIPT>";',
});

// node:crypto is the second implementation of SHA-256 here.
const digest = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

it('allows its one script and its one stylesheet by their digests, and nothing else', () => {
  const script = /<script>(.*?)<\/script>/s.exec(page)![1]!;
  expect(/http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)![1]).toBe(
    `default-src 'none'; script-src ${digest(script)}; style-src ${digest('p{color:red}')}; img-src data:; ` +
      "connect-src 'none'; base-uri 'none'; form-action 'none'; worker-src blob:",
  );
});

it('writes what would end the script as an escape that means the same', () => {
  expect(page.match(/<script/gi)).toHaveLength(1);
  expect(page).toContain(String.raw`const a = "\x3C/script>\x3C!--\x3CSCRIPT>";`);
});

it('allows a script that the first one adds by its digest too', () => {
  const [title, description, style, script] = ['T', 'D', 'p{}', 'const a = 1;'];
  const language = 'en';
  const later = 'const b = "</script>";';
  const text = scriptedPage({ title, description, language, body: html``, style, script, later });
  expect(text).toContain(`script-src ${digest(script)} ${digest(later)};`);
  expect(text).not.toContain(later);
});

it('says its language', () => {
  expect(page).toContain('<html lang="de">');
});

it('escapes its title', () => {
  expect(page).toContain('<title>A &lt;b&gt; title</title>');
});
