/**
 * A drawing as SVG text that a report can hold: small, without styles or scripts, the same bytes from any DOM.
 *
 * What Plot draws is written out anew rather than by the DOM's own serialiser, since DOMs differ in the order of
 * attributes. Ids are counted under a prefix (Plot counts them per process, and they clash on a page),
 * coordinates are rounded to 0.1 (the last digits of `exp` differ between engines), and dots of one kind become
 * one path, a tenth of the size.
 */

/** What a reader who does not see the drawing is told, and where it stands on the page. */
export interface Naming {
  /** Keeps ids of several drawings on a page apart: letters, digits and hyphens. */
  readonly prefix: string;
  readonly label: string;
  readonly description: string;
}

/** Attributes that the page's policy forbids, that mean nothing inside an image, or that the root gets anew. */
const DROPPED = /^(style|class|xmlns|aria-.*)$/;
const GEOMETRY = /^(d|transform|points|viewBox|[xy][12]?|c[xy]|r[xy]?|d[xy]|width|height|stroke-width)$/;

/**
 * Writes a drawn `svg` element as markup with accessible name and description.
 *
 * @param root the element as drawn; it is not changed
 * @param width, height size of the drawing in its own units
 * @param textSize size of all text in the same units
 * @throws RangeError if the prefix is not fit for an id
 */
export function svgMarkup(
  root: Element,
  naming: Naming,
  { width, height, textSize }: { readonly width: number; readonly height: number; readonly textSize: number },
): string {
  const { prefix, label, description } = naming;
  if (!/^[a-z][a-z0-9-]*$/i.test(prefix)) {
    throw new RangeError(
      `svgMarkup: prefix must be letters, digits and hyphens, got ${JSON.stringify(prefix)}`,
    );
  }
  const ids = countedIds(root, prefix);
  const body = Array.from(root.children, (child) => element(child, ids)).join('');
  return (
    `<svg class="chart" role="img" aria-labelledby="${prefix}-name" aria-describedby="${prefix}-description"` +
    ` viewBox="0 0 ${rounded(width)} ${rounded(height)}" fill="currentColor" font-family="system-ui,sans-serif"` +
    ` font-size="${textSize}" text-anchor="middle">` +
    `<title id="${prefix}-name">${escaped(label)}</title>` +
    `<desc id="${prefix}-description">${escaped(description)}</desc>${body}</svg>`
  );
}

function countedIds(root: Element, prefix: string): ReadonlyMap<string, string> {
  const drawn = Array.from(root.querySelectorAll('[id]'), (node) => node.getAttribute('id') ?? '');
  return new Map(drawn.map((id, index) => [id, `${prefix}-${index + 1}`]));
}

/** One element with what it holds; groups of dots as one path. */
function element(node: Element, ids: ReadonlyMap<string, string>): string {
  if (node.localName === 'style' || node.localName === 'title') return '';
  const dots = dotPath(node);
  if (dots !== null) return dots;
  const content = node.children.length === 0 ? escaped(node.textContent ?? '') : inner(node, ids);
  const open = `<${node.localName}${attributes(node, ids)}`;
  return content === '' ? `${open}/>` : `${open}>${content}</${node.localName}>`;
}

function inner(node: Element, ids: ReadonlyMap<string, string>): string {
  return Array.from(node.children, (child) => element(child, ids)).join('');
}

function attributes(node: Element, ids: ReadonlyMap<string, string>): string {
  return Array.from(node.attributes)
    .filter(({ name }) => !DROPPED.test(name))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map(({ name, value }) => ` ${name}="${escaped(attribute(name, value, ids))}"`)
    .join('');
}

function attribute(name: string, value: string, ids: ReadonlyMap<string, string>): string {
  if (GEOMETRY.test(name))
    return value.replace(/-?\d*\.?\d+(e[-+]?\d+)?/gi, (number) => rounded(Number(number)));
  if (name === 'id') return ids.get(value) ?? value;
  return value.replace(/(^|url\()#([^)]+)/g, (_, before, id) => `${before}#${ids.get(id) ?? id}`);
}

/**
 * A group of equal circles as one path: a line of no length with round ends is a dot. A hollow dot is a wide one in
 * its colour under a narrower one in the colour inside. Null where the group is anything else.
 */
function dotPath(group: Element): string | null {
  const circles = Array.from(group.children);
  const radius = circles[0]?.getAttribute('r') ?? null;
  if (radius === null || !circles.every((node) => isPlainDot(node, radius))) return null;
  const d = circles.map((node) => `M${coordinate(node, 'cx')},${coordinate(node, 'cy')}h0`).join('');
  const stroke = group.getAttribute('stroke') ?? 'none';
  const fill = group.getAttribute('fill') ?? 'currentColor';
  const line = stroke === 'none' ? 0 : Number(group.getAttribute('stroke-width') ?? 1);
  const layers = line === 0 ? [] : [{ colour: stroke, wide: 2 * Number(radius) + line }];
  if (fill !== 'none') layers.push({ colour: fill, wide: 2 * Number(radius) - line });
  const paths = layers.map(
    ({ colour, wide }) => `<path d="${d}" stroke="${escaped(colour)}" stroke-width="${rounded(wide)}"/>`,
  );
  return `<g fill="none" stroke-linecap="round">${paths.join('')}</g>`;
}

function isPlainDot(node: Element, radius: string): boolean {
  return (
    node.localName === 'circle' &&
    node.getAttribute('r') === radius &&
    node.children.length === 0 &&
    Array.from(node.attributes).every(({ name }) => name === 'r' || name === 'cx' || name === 'cy')
  );
}

function coordinate(node: Element, name: string): string {
  return rounded(Number(node.getAttribute(name)));
}

/** A coordinate to 0.1, without a needless end: "12", "12.3", "-0.5". A half goes up, however it was reached. */
function rounded(value: number): string {
  return String(Math.floor(value * 10 + 0.5 + 1e-6) / 10 + 0);
}

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
