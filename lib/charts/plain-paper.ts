/**
 * Paper to draw on where there is no document and linkedom would weigh too much: a Worker. It knows the little of the
 * DOM that the drawing library and `svgMarkup` use, and no more.
 */

const SVG = 'http://www.w3.org/2000/svg';
const NO_STYLE = { setProperty() {}, removeProperty() {}, getPropertyValue: () => '' };

interface PlainText {
  readonly data: string;
  parentNode: PlainElement | null;
}

type PlainNode = PlainText | PlainElement;

class PlainElement {
  readonly ownerDocument: PlainDocument;
  readonly namespaceURI: string;
  readonly localName: string;
  /** Styles are dropped from a drawing anyway. */
  readonly style = NO_STYLE;
  readonly childNodes: PlainNode[] = [];
  parentNode: PlainElement | null = null;
  readonly #attributes = new Map<string, string>();

  constructor(ownerDocument: PlainDocument, namespaceURI: string, localName: string) {
    this.ownerDocument = ownerDocument;
    this.namespaceURI = namespaceURI;
    this.localName = localName;
  }

  get tagName(): string {
    return this.localName;
  }
  get children(): PlainElement[] {
    return this.childNodes.filter((node) => node instanceof PlainElement);
  }
  get firstChild(): PlainNode | null {
    return this.childNodes[0] ?? null;
  }
  get attributes(): { readonly name: string; readonly value: string }[] {
    return [...this.#attributes].map(([name, value]) => ({ name, value }));
  }
  get textContent(): string {
    return this.childNodes
      .map((node) => (node instanceof PlainElement ? node.textContent : node.data))
      .join('');
  }
  set textContent(text: string) {
    this.childNodes.length = 0;
    if (text !== '') this.appendChild(this.ownerDocument.createTextNode(text));
  }

  getAttribute(name: string): string | null {
    return this.#attributes.get(name) ?? null;
  }
  setAttribute(name: string, value: unknown): void {
    this.#attributes.set(name, String(value));
  }
  setAttributeNS(_space: string, name: string, value: unknown): void {
    this.setAttribute(name, value);
  }
  removeAttribute(name: string): void {
    this.#attributes.delete(name);
  }
  appendChild<T extends PlainNode>(node: T): T {
    return this.insertBefore(node, null);
  }
  append(...nodes: readonly (PlainNode | string)[]): void {
    for (const node of nodes)
      this.appendChild(typeof node === 'string' ? this.ownerDocument.createTextNode(node) : node);
  }
  insertBefore<T extends PlainNode>(node: T, before: PlainNode | null): T {
    node.parentNode?.removeChild(node);
    const at = before === null ? this.childNodes.length : this.childNodes.indexOf(before);
    this.childNodes.splice(at, 0, node);
    node.parentNode = this;
    return node;
  }
  removeChild<T extends PlainNode>(node: T): T {
    this.childNodes.splice(this.childNodes.indexOf(node), 1);
    node.parentNode = null;
    return node;
  }
  /** By the one selector that is asked for: everything that has an id. */
  querySelectorAll(selector: string): PlainElement[] {
    if (selector !== '[id]') throw new TypeError(`plainPaper: only [id] can be looked for, got ${selector}`);
    return this.children.flatMap((child) => [
      ...(child.getAttribute('id') === null ? [] : [child]),
      ...child.querySelectorAll(selector),
    ]);
  }
}

class PlainDocument {
  readonly documentElement = new PlainElement(this, SVG, 'svg');
  createElementNS(space: string, name: string): PlainElement {
    return new PlainElement(this, space, name);
  }
  createTextNode(data: unknown): PlainText {
    return { data: String(data), parentNode: null };
  }
}

/** A document for `figure.draw`, good for drawing alone. The drawings are those that any other document gives. */
export function plainPaper(): Document {
  return new PlainDocument() as unknown as Document;
}
