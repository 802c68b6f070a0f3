/** XML as a run of tags and text; the only file that knows saxen. */

import { Parser } from 'saxen';

/** What is told of an XML text as it is walked through. Names come without their prefix. */
export interface XmlEvents {
  readonly open: (name: string, attribute: (name: string) => string | undefined) => void;
  readonly close: (name: string) => void;
  readonly text?: (text: string) => void;
}

function withoutPrefix(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

/** The value of an attribute by its name with or without a prefix. */
function attributeOf(
  attributes: Readonly<Record<string, string>>,
  decode: (text: string) => string,
  name: string,
): string | undefined {
  const found = Object.entries(attributes).find(([full]) => full === name || full.endsWith(`:${name}`));
  return found === undefined ? undefined : decode(found[1]);
}

/**
 * Walks through an XML text. Entities beyond XML's own five and numbered characters are never resolved.
 *
 * @throws Error where the text is not well-formed
 */
export function walkXml(xml: string, { open, close, text }: XmlEvents): void {
  let fault: Error | null = null;
  const parser = new Parser();
  parser.on('openTag', (name, attributes, decode) => {
    let known: Readonly<Record<string, string>> | null = null;
    open(withoutPrefix(name), (wanted) => {
      known ??= attributes();
      return attributeOf(known, decode, wanted);
    });
  });
  parser.on('closeTag', (name) => close(withoutPrefix(name)));
  if (text !== undefined) {
    parser.on('text', (raw, decode) => text(decode(raw)));
    parser.on('cdata', text);
  }
  parser.on('error', (error) => {
    fault ??= error;
    parser.stop();
  });
  parser.parse(xml);
  if (fault !== null) throw fault;
}
