/** A figure: finding, accessible name, description, table and drawing from one object. Computes no statistic. */

/** A cell of a figure's table: already worded. `numeric` cells are set flush right. */
export interface FigureTable {
  readonly caption: string;
  readonly columns: readonly { readonly title: string; readonly numeric?: boolean }[];
  /** One array of worded cells a row; the first cell is the row's header. */
  readonly rows: readonly (readonly string[])[];
  /** Key of the analysis the numbers come from, for instance `raw.byStorage`. */
  readonly source: string;
}

/** A chart with everything a page says about it; `draw` gives its picture, `table` the same numbers. */
export interface Figure {
  readonly kind: 'figure';
  /** Name used for counted ids and saved files: kebab case. */
  readonly name: string;
  /** The finding, one sentence: the figure's caption. */
  readonly finding: string;
  /** Accessible name of the drawing, short. */
  readonly label: string;
  /** What the drawing shows, in words, for those who do not see it. */
  readonly description: string;
  readonly table: FigureTable;
  /** Draws into the document given; `prefix` keeps ids of several figures on a page apart. Returns SVG markup. */
  readonly draw: (document: Document, prefix: string) => string;
}
