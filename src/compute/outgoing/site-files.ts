/** A printed site as it lies in its folder. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { compareText } from '../../problem.ts';

export interface SiteFile {
  /** Below the folder, with forward slashes. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** All files of a folder, by path. */
export function siteFiles(folder: string): SiteFile[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((file) => ({ path: relative(folder, file).split(sep).join('/'), bytes: readFileSync(file) }))
    .sort((a, b) => compareText(a.path, b.path));
}

/** The path of an address, with its characters written out; as it stands where it is not written in UTF-8. */
export function pathIn(address: string): string {
  try {
    return decodeURI(address);
  } catch {
    return address;
  }
}

export function textOf({ bytes }: SiteFile): string {
  return new TextDecoder().decode(bytes);
}

/** 1-based line and column of an offset. */
export function placeIn(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset);
  const start = before.lastIndexOf('\n') + 1;
  let line = 1;
  for (let at = before.indexOf('\n'); at >= 0; at = before.indexOf('\n', at + 1)) line++;
  return { line, column: offset - start + 1 };
}
