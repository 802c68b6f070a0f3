/** The library's own pages, files under `api/`; null where typedoc has something to complain about. */
export function apiPages(): Promise<readonly { readonly name: string; readonly text: string }[] | null>;
