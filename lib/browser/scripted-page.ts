/** A page with its own script: a file that works from a double click, and that nothing may be added to. */

import type { Html } from '../notebook/html.ts';
import { escapeHtml } from '../notebook/html.ts';
import { policyDigest } from '../notebook/page.ts';
import type { Language } from '../words/language.ts';

/** What a page with a script is made of. */
export interface ScriptedPage {
  readonly title: string;
  readonly description: string;
  readonly language: Language;
  readonly body: Html;
  readonly style: string;
  /** One classic script; it runs when the body is there. */
  readonly script: string;
  /** A script that the first one adds to the page, exactly so. */
  readonly later?: string;
}

/** What would end a script, or hide its end, as the escape that means the same inside a string or a pattern. */
export function escapedScript(script: string): string {
  return script.replaceAll(/<(?=!--|script|\/script)/gi, '\\x3C');
}

/**
 * The page: its own scripts and stylesheet are allowed by their digests, a Worker by an address made in the page, and
 * nothing else may be loaded, sent or run.
 */
export function scriptedPage(page: ScriptedPage): string {
  const { title, description, language, body, style, script, later } = page;
  const code = escapedScript(script);
  const policy = [
    "default-src 'none'",
    `script-src ${[code, ...(later === undefined ? [] : [later])].map(policyDigest).join(' ')}`,
    `style-src ${policyDigest(style)}`,
    'img-src data:',
    "connect-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    'worker-src blob:',
  ].join('; ');
  return `<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="description" content="${escapeHtml(description)}">
<title>${escapeHtml(title)}</title>
<style>${style}</style>
</head>
<body>
${body.markup}<script>${code}</script>
</body>
</html>
`;
}
