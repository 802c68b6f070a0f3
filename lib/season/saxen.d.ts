declare module 'saxen' {
  /** The part of saxen that is used here: plain mode, without namespaces. */
  export class Parser {
    on(
      event: 'openTag',
      listener: (
        name: string,
        attributes: () => Readonly<Record<string, string>>,
        decode: (text: string) => string,
        selfClosing: boolean,
      ) => void,
    ): this;
    on(event: 'closeTag', listener: (name: string) => void): this;
    on(event: 'text', listener: (text: string, decode: (text: string) => string) => void): this;
    on(event: 'cdata', listener: (text: string) => void): this;
    on(event: 'error', listener: (error: Error) => void): this;
    parse(xml: string): unknown;
    stop(): void;
  }
}
