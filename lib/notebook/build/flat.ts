/** A notebook as one TypeScript file: every character of a cell where the notebook has it, prose blanked. */

import ts from 'typescript';
import type { Fault } from '../fault.ts';
import type { Cell, Notebook } from './cells.ts';

/** A notebook's cells, parsed together; lines and columns are the notebook's own. */
export interface FlatSource {
  readonly notebook: Notebook;
  readonly cells: readonly Cell[];
  readonly source: ts.SourceFile;
}

/** The cells' text with every other line blank: line n of the result is line n of the notebook. */
export function flatText(notebook: Notebook): string {
  const lines = notebook.lines.map(() => '');
  for (const part of notebook.parts) {
    if (part.kind === 'cell') lines.splice(part.line, part.lines.length, ...part.lines);
  }
  return lines.join('\n');
}

/** Parses the cells of a notebook as one file. */
export function flatSource(notebook: Notebook): FlatSource {
  const cells = notebook.parts.filter((part) => part.kind === 'cell');
  const source = ts.createSourceFile(
    `${notebook.file}.mts`,
    flatText(notebook),
    ts.ScriptTarget.ES2023,
    true,
  );
  return { notebook, cells, source };
}

/** The index of the cell that holds a position; -1 for a position in no cell. */
export function cellAt({ cells, source }: FlatSource, position: number): number {
  const line = source.getLineAndCharacterOfPosition(position).line + 1;
  return cells.findIndex((cell) => line > cell.line && line < cell.endLine);
}

/** A fault at a node of the flat file. */
export function faultAt({ notebook, source }: FlatSource, node: ts.Node, message: string): Fault {
  const { line, character } = source.getLineAndCharacterOfPosition(node.getStart(source));
  return { file: notebook.file, line: line + 1, column: character + 1, message };
}

/** The names that the top level of a cell defines with `const`. */
export function namesDefined(flat: FlatSource, cell: number): string[] {
  return flat.source.statements
    .filter((statement) => ts.isVariableStatement(statement))
    .filter((statement) => cellAt(flat, statement.getStart(flat.source)) === cell)
    .flatMap((statement) => statement.declarationList.declarations)
    .flatMap((declaration) => boundNames(declaration.name));
}

function boundNames(name: ts.BindingName): string[] {
  if (ts.isIdentifier(name)) return [name.text];
  return name.elements.flatMap((element) => (ts.isBindingElement(element) ? boundNames(element.name) : []));
}

/** Every name that a cell mentions, also those that turn out to be keys or its own. */
export function namesMentioned(flat: FlatSource, cell: number): Set<string> {
  const names = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) names.add(node.text);
    ts.forEachChild(node, visit);
  };
  for (const statement of flat.source.statements) {
    if (cellAt(flat, statement.getStart(flat.source)) === cell) visit(statement);
  }
  return names;
}

/**
 * What may stand at a cell's top level: `const`, `import`, `type` and `interface`. A function declared in a later
 * cell would pass the type check and fail when run; so it is a fault here, as are statements that span cells.
 */
export function shapeFaults(flat: FlatSource): Fault[] {
  const { notebook, source } = flat;
  const allowed = ['fruitodds', ...notebook.packages];
  return source.statements.flatMap((statement) => {
    const faults: Fault[] = [];
    const fault = (message: string): number => faults.push(faultAt(flat, statement, message));
    if (cellAt(flat, statement.getStart(source)) !== cellAt(flat, statement.getEnd() - 1)) {
      fault('a statement must end in the cell in which it begins');
    }
    if (ts.isImportDeclaration(statement)) {
      const address = (statement.moduleSpecifier as ts.StringLiteral).text;
      if (!allowed.includes(address)) {
        fault(`a cell may import from ${allowed.join(', ')} only, not from ${address}`);
      }
    } else if (!isPlainStatement(statement)) {
      fault(
        'the top level of a cell may hold const, import, type and interface only; a function is a const too',
      );
    }
    return [...faults, ...forbiddenInside(flat, statement)];
  });
}

function isPlainStatement(statement: ts.Statement): boolean {
  if (ts.isTypeAliasDeclaration(statement) || ts.isInterfaceDeclaration(statement)) {
    return statement.modifiers === undefined;
  }
  if (!ts.isVariableStatement(statement) || statement.modifiers !== undefined) return false;
  return (statement.declarationList.flags & ts.NodeFlags.BlockScoped) === ts.NodeFlags.Const;
}

function forbiddenInside(flat: FlatSource, statement: ts.Statement): Fault[] {
  const faults: Fault[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isClassLike(node)) faults.push(faultAt(flat, node, 'a cell may not hold a class'));
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      faults.push(faultAt(flat, node, 'a cell may import at its top level only'));
    }
    ts.forEachChild(node, visit);
  };
  visit(statement);
  return faults;
}
