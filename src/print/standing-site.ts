/**
 * Whether `dist/` is the site that a build would print once more: made from the same manifest, pages, configuration and packages, and byte
 * for byte what was printed. Then Astro, which takes most of an unchanged build, is not even loaded.
 *
 * Every page of `dist/` is read and digested for that. Times and sizes would be quicker to look at, and would not show a disk that gives
 * back other bytes. Of large files, pictures and archives, they are looked at all the same (`store/known-digests.ts`): sixty photographs
 * would take longer than all the rest.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { CONFIG } from '../compute/project/read-project.ts';
import type { Manifest } from '../compute/results.ts';
import { packagesOf } from '../compute/store/code.ts';
import { digestOf } from '../compute/store/digest.ts';
import { type KnownDigests, openKnown } from '../compute/store/known-digests.ts';
import { codeFolder, toolFolder } from '../compute/store/places.ts';
import { readSealed, writeSealed } from '../compute/store/sealed-text.ts';
import { writeWhole } from '../compute/store/store.ts';
import { treeDigests } from './tree-digests.ts';

export interface StandingSite {
  /** Whether `dist/` is the site of the manifest. */
  stands(): boolean;
  /** The digests of a printed folder that will be `dist/`, every byte read. */
  read(side: string): ReadonlyMap<string, string>;
  /** Remembers them, once it is `dist/`. */
  remember(digests: ReadonlyMap<string, string>): void;
}

/** Looks at code and configuration as they are now: a change while pages are printed is a change for the next build. */
export function standingSite(root: string, manifest: Manifest): StandingSite {
  const sealed = join(root, '.cache', 'standing.json');
  const site = join(root, 'dist');
  const list = join(root, '.cache', 'known-site.json');
  const known = openKnown(list);
  const keep = () => {
    const listed = known.listed();
    if (listed !== undefined) writeWhole(list, listed);
  };
  const madeFrom = saysAll(root) ? digestOf([JSON.stringify(manifest), ...printers()]) : undefined;
  const seal = (digests: ReadonlyMap<string, string>) => JSON.stringify({ madeFrom, site: digestOf(digests) });
  return {
    stands: () => {
      const last = madeFrom === undefined ? undefined : readSealed(sealed);
      const digests = last === undefined ? undefined : digestsOf(site, known.of);
      if (digests !== undefined) keep();
      return digests !== undefined && last === seal(digests);
    },
    read: (side) => treeDigests(side, known.read),
    remember: (digests) => {
      keep();
      if (madeFrom !== undefined) writeSealed(sealed, seal(digests));
    },
  };
}

/** Undefined where there is no such folder or the disk does not give it back: a build then makes it anew. */
function digestsOf(site: string, digestOf: KnownDigests['of']): ReadonlyMap<string, string> | undefined {
  try {
    return treeDigests(site, digestOf);
  } catch {
    return undefined;
  }
}

/** All by which a page can look different though its model is the same. */
function printers(): unknown[] {
  const tool = toolFolder();
  const beside = ['package.json', 'tsconfig.json'].map((name) => join(tool, name));
  return [
    process.version,
    treeDigests(codeFolder()),
    packagesOf(tool),
    beside.map((path) => existsSync(path) && readFileSync(path, 'utf8')),
  ];
}

/**
 * What a configuration may hang on besides its text. It is looked for in all of the text, comments and words too: to take a word for a program
 * costs a second, to take a program for a word would leave an old site standing.
 */
const BEYOND =
  /\bimport(?!\s+[\w{*'"])|\/\*|\$\{|\b(?:require|process|globalThis|global|fetch|Date|Temporal|random|crypto|performance|navigator|eval|Function)\b/;

/**
 * Whether `astro.config.mjs`, whose text is among what the manifest was made from, says all by itself. It is a program: one that imports
 * files of its own or asks the shell may say something else the next time, and Astro is then asked.
 */
function saysAll(root: string): boolean {
  const path = join(root, CONFIG);
  if (!existsSync(path)) return false;
  const text = readFileSync(path, 'utf8');
  const imported = [...text.matchAll(/\b(?:from|import)\s*['"]([^'"]+)['"]/g)].map(([, name = '']) => name);
  const known = (name: string) => KNOWN.has(name) || (name.startsWith('.') && resolve(root, name).startsWith(codeFolder()));
  return !BEYOND.test(text) && imported.every(known);
}

const KNOWN = new Set(['soakproof', 'astro/config']);
