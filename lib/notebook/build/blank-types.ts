/**
 * TypeScript → JavaScript by putting spaces where types stood, so that every other character keeps its line and
 * column and a fault when running names the notebook's own place without a source map.
 */

import ts from 'typescript';

/** The text of a file with its types blanked. Import declarations are left out altogether: see `importLines`. */
export function blankTypes(source: ts.SourceFile): string {
  const characters = [...source.text.split('')];
  const blank = (start: number, end: number, mark = ' '): void => {
    for (let at = start; at < end; at += 1) {
      if (characters[at] !== '\n' && characters[at] !== '\r') characters[at] = ' ';
    }
    if (mark !== ' ' && start < end) characters[start] = mark;
  };
  const visit = (node: ts.Node): void => {
    if (isTypeStatement(node)) {
      blank(node.getStart(source), node.end, ';');
      return;
    }
    if (ts.isImportDeclaration(node)) {
      blank(node.getStart(source), node.end);
      return;
    }
    for (const [start, end, mark] of typeRanges(node, source)) blank(start, end, mark);
    ts.forEachChild(node, (child) => {
      if (!ts.isTypeNode(child) || ts.isExpressionWithTypeArguments(child)) visit(child);
    });
  };
  visit(source);
  return characters.join('');
}

/** The import declarations of a file without types, each on one line; none for `import type`. */
export function importLines(source: ts.SourceFile): string[] {
  return source.statements
    .filter((statement) => ts.isImportDeclaration(statement))
    .flatMap((statement) => {
      const clause = statement.importClause;
      if (clause?.phaseModifier === ts.SyntaxKind.TypeKeyword) return [];
      const from = JSON.stringify((statement.moduleSpecifier as ts.StringLiteral).text);
      const bindings = [clause?.name?.text, namedBindings(clause?.namedBindings)].filter(
        (text) => text !== undefined,
      );
      return [bindings.length === 0 ? `import ${from};` : `import ${bindings.join(', ')} from ${from};`];
    });
}

function namedBindings(bindings: ts.NamedImportBindings | undefined): string | undefined {
  if (bindings === undefined) return undefined;
  if (ts.isNamespaceImport(bindings)) return `* as ${bindings.name.text}`;
  const names = bindings.elements
    .filter((element) => !element.isTypeOnly)
    .map(({ propertyName, name }) => (propertyName ? `${propertyName.text} as ${name.text}` : name.text));
  return `{ ${names.join(', ')} }`;
}

function isTypeStatement(node: ts.Node): boolean {
  return ts.isTypeAliasDeclaration(node) || ts.isInterfaceDeclaration(node);
}

type Range = readonly [start: number, end: number, mark?: string];

function typeRanges(node: ts.Node, source: ts.SourceFile): Range[] {
  const ranges: Range[] = [];
  if (ts.isVariableDeclaration(node) || ts.isParameter(node)) {
    const end = node.type?.end ?? (ts.isParameter(node) ? node.questionToken?.end : undefined);
    if (end !== undefined) ranges.push([node.name.end, end]);
  } else if (ts.isFunctionLike(node) && node.type !== undefined) {
    ranges.push([node.type.pos - 1, node.type.end]);
  } else if (ts.isAsExpression(node) || ts.isSatisfiesExpression(node)) {
    ranges.push([node.expression.end, node.end, endsItsStatement(node) ? ';' : ' ']);
  } else if (ts.isNonNullExpression(node)) {
    ranges.push([node.end - 1, node.end]);
  }
  const list = typeList(node);
  if (list !== undefined) ranges.push([list.pos - 1, source.text.indexOf('>', list.end) + 1]);
  return ranges;
}

function typeList(node: ts.Node): ts.NodeArray<ts.Node> | undefined {
  if (ts.isFunctionLike(node)) return node.typeParameters;
  if (ts.isCallExpression(node) || ts.isNewExpression(node)) return node.typeArguments;
  if (ts.isTaggedTemplateExpression(node) || ts.isExpressionWithTypeArguments(node))
    return node.typeArguments;
  return undefined;
}

/** `a as T` at the end of a statement without a semicolon: the next line must not become a call of `a`. */
function endsItsStatement(node: ts.Node): boolean {
  const statement = ts.findAncestor(node, ts.isStatement);
  return statement !== undefined && statement.end === node.end;
}
