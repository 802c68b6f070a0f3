/** Types and order of cells: TypeScript's own checker, its faults at the notebook's own line and column. */

import { dirname, resolve } from 'node:path';
import ts from 'typescript';
import type { Fault } from '../fault.ts';
import type { Notebook, Slot } from './cells.ts';
import { slotsOf } from './cells.ts';
import type { FlatSource } from './flat.ts';
import { cellAt, faultAt, flatSource, shapeFaults } from './flat.ts';

const options: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2023,
  lib: ['lib.es2023.d.ts', 'lib.dom.d.ts'],
  module: ts.ModuleKind.NodeNext,
  moduleResolution: ts.ModuleResolutionKind.NodeNext,
  types: [],
  strict: true,
  exactOptionalPropertyTypes: true,
  erasableSyntaxOnly: true,
  verbatimModuleSyntax: true,
  skipLibCheck: true,
  noEmit: true,
};

/** A notebook with the text its checker reads and the slots that stand at the end of that text, one a line. */
interface CheckedFile {
  readonly flat: FlatSource;
  readonly text: string;
  readonly slots: readonly Slot[];
}

/**
 * Everything wrong with some notebooks that can be known without running them: the shape of cells, types, names
 * that no cell defines, names of a cell further down, and slots whose value prose cannot show.
 *
 * @param notebooks as `readNotebook` gives them
 * @param root folder of the package whose `fruitodds` the cells import
 */
export function checkNotebooks(notebooks: readonly Notebook[], root: string): Fault[] {
  return notebookChecker(root)(notebooks);
}

/**
 * The same, to be asked again and again: sources of types are read once, and a notebook whose cells and slots are as
 * they were keeps its faults, since no notebook sees another.
 *
 * @param root folder of the package; its library must stay as it is
 */
export function notebookChecker(root: string): (notebooks: readonly Notebook[]) => Fault[] {
  const sources = new Map<string, ts.SourceFile | undefined>();
  const known = new Map<string, { readonly key: string; readonly faults: readonly Fault[] }>();
  let before: ts.Program | undefined;
  return (notebooks) => {
    const files = new Map(
      notebooks.map((notebook) => [resolve(root, `${notebook.file}.mts`), checkedFile(notebook)]),
    );
    const changed = [...files].filter(([path, file]) => known.get(path)?.key !== keyOf(file));
    if (changed.length > 0) {
      const program = ts.createProgram([...files.keys()], options, virtualHost(files, root, sources), before);
      before = program;
      for (const [path, file] of changed)
        known.set(path, { key: keyOf(file), faults: faultsOf(file, path, program) });
    }
    return [...files.keys()].flatMap((path) => known.get(path)!.faults);
  };
}

/** What a notebook's faults and their places depend on. */
function keyOf({ flat, text }: CheckedFile): string {
  return JSON.stringify([text, flat.notebook.lines, flat.notebook.packages]);
}

function faultsOf(file: CheckedFile, path: string, program: ts.Program): Fault[] {
  const shape = shapeFaults(file.flat);
  const source = program.getSourceFile(path)!;
  const types = [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)]
    .filter((diagnostic) => !isSecondOfTwo(file, source, diagnostic))
    .map((diagnostic) => typeFault(file, source, diagnostic, program.getTypeChecker()));
  return [...shape, ...types, ...orderFaults(file.flat, source, program.getTypeChecker())].sort(
    (one, other) => one.line - other.line || one.column - other.column,
  );
}

function checkedFile(notebook: Notebook): CheckedFile {
  const flat = flatSource(notebook);
  const slots = notebook.parts.flatMap((part) => (part.kind === 'prose' ? slotsOf(part) : []));
  const tail = [
    ...slots.map((slot) => `shown(${slot.expression});`),
    "declare const given: import('fruitodds').Given;",
    "declare const shown: (value: import('fruitodds').Shown) => void;",
    'export {};',
  ];
  return { flat, text: `${flat.source.text}\n${tail.join('\n')}\n`, slots };
}

/** @param sources of types, read once: the same object tells the compiler that a file has not changed */
function virtualHost(
  files: ReadonlyMap<string, CheckedFile>,
  root: string,
  sources: Map<string, ts.SourceFile | undefined>,
): ts.CompilerHost {
  const host = ts.createCompilerHost(options, true);
  const path = (name: string): string => resolve(root, name);
  return {
    ...host,
    getCurrentDirectory: () => root,
    fileExists: (name) => files.has(path(name)) || host.fileExists(name),
    readFile: (name) => files.get(path(name))?.text ?? host.readFile(name),
    directoryExists: (name) =>
      [...files.keys()].some((file) => dirname(file) === path(name)) || ts.sys.directoryExists(name),
    getSourceFile: (name, languageVersion, ...rest) => {
      const text = files.get(path(name))?.text;
      if (text === undefined) {
        if (!sources.has(name)) sources.set(name, host.getSourceFile(name, languageVersion, ...rest));
        return sources.get(name);
      }
      const before = sources.get(name);
      if (before?.text === text) return before;
      sources.set(name, ts.createSourceFile(name, text, languageVersion, true));
      return sources.get(name);
    },
  };
}

function typeFault(
  { flat, slots }: CheckedFile,
  source: ts.SourceFile,
  diagnostic: ts.Diagnostic,
  checker: ts.TypeChecker,
): Fault {
  const { file, lines } = flat.notebook;
  const message = ts.flattenDiagnosticMessageText(diagnostic.messageText, '\n').replaceAll('\n', ' ');
  const { line, character } = source.getLineAndCharacterOfPosition(diagnostic.start ?? 0);
  if (line < lines.length) return { file, line: line + 1, column: character + 1, message };
  const slot = slots[line - lines.length];
  if (slot === undefined) return { file, line: lines.length, column: 1, message };
  const column = slot.column + character - 'shown('.length;
  if (diagnostic.code !== notAssignable) return { file, line: slot.line, column, message };
  const type = checker.typeToString(slotType(source, line, checker));
  const rule = 'what stands in prose must be text, a number, html or a figure';
  return { file, line: slot.line, column, message: `${rule}; ${slot.expression} is ${type}` };
}

const notAssignable = 2345;
const redeclared = 2451;

/** A cell that defines `given` clashes with the declaration after the last line: only the cell's place is told. */
function isSecondOfTwo(
  { flat }: CheckedFile,
  source: ts.SourceFile,
  { code, start }: ts.Diagnostic,
): boolean {
  const { line } = source.getLineAndCharacterOfPosition(start ?? 0);
  return code === redeclared && line >= flat.notebook.lines.length;
}

function slotType(source: ts.SourceFile, line: number, checker: ts.TypeChecker): ts.Type {
  const statement = source.statements.find(
    (candidate) => source.getLineAndCharacterOfPosition(candidate.getStart(source)).line === line,
  ) as ts.ExpressionStatement;
  return checker.getTypeAtLocation((statement.expression as ts.CallExpression).arguments[0]!);
}

/** A function may mention a name defined later in the file; here each cell knows only the cells above it. */
function orderFaults(flat: FlatSource, source: ts.SourceFile, checker: ts.TypeChecker): Fault[] {
  const faults: Fault[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) {
      const own = cellAt(flat, node.getStart(source));
      const declaration = valueSymbol(node, checker)?.valueDeclaration;
      if (own >= 0 && declaration?.getSourceFile() === source) {
        const other = cellAt(flat, declaration.getStart(source));
        const message = `a cell sees only the cells above it: ${node.text} is defined further down`;
        if (other > own) faults.push(faultAt({ ...flat, source }, node, message));
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return faults;
}

/** The symbol a name stands for; in `{ name }` that is the value, not the key. */
function valueSymbol(node: ts.Identifier, checker: ts.TypeChecker): ts.Symbol | undefined {
  if (ts.isShorthandPropertyAssignment(node.parent))
    return checker.getShorthandAssignmentValueSymbol(node.parent);
  return checker.getSymbolAtLocation(node);
}
