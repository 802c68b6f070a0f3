/** What a program can say: the text of its sources' strings, templates and names of keys. */

import ts from 'typescript';

/**
 * Every string, piece of a template and name of a property in some sources, one a line. Comments say nothing to a
 * reader of a page, so they are left out.
 *
 * @param files TypeScript, and JSON as it stands
 */
export function textOfSources(files: readonly { readonly name: string; readonly text: string }[]): string {
  const found = new Set<string>();
  for (const { name, text } of files) {
    const source = ts.createSourceFile(name, text, ts.ScriptTarget.ES2023, false);
    const visit = (node: ts.Node): void => {
      if (
        ts.isStringLiteralLike(node) ||
        ts.isTemplateHead(node) ||
        ts.isTemplateMiddleOrTemplateTail(node)
      ) {
        found.add(node.text);
      }
      if (
        ts.isPropertySignature(node) ||
        ts.isPropertyAssignment(node) ||
        ts.isShorthandPropertyAssignment(node)
      ) {
        if (ts.isIdentifier(node.name)) found.add(node.name.text);
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return [...found].join('\n');
}
