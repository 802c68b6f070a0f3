/** Takes changes and calls `build` after them, one run at a time. */
export function afterChanges(
  build: (names: readonly string[]) => void | Promise<void>,
  clock?: {
    readonly set: (call: () => void, milliseconds: number) => unknown;
    readonly clear: (waiting: never) => void;
  },
): { readonly changed: (name: string) => void; readonly idle: () => Promise<void> };
