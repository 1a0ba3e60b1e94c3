export function commandsIn(folder: string): ReadonlyMap<string, { readonly file: string; readonly does: string }>;
