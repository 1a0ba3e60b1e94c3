/** The tool as a package, in a folder: all that `npm pack` then puts into one file. */
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { stripTypeScriptTypes } from 'node:module';
import { dirname, extname, join, sep } from 'node:path';
import { codeDigests, PACKED_DIGESTS } from '../../src/compute/store/code.ts';
import { openCode } from '../../src/compute/store/imports.ts';

export const ROOT = join(import.meta.dirname, '..', '..');
const SRC = join(ROOT, 'src');

/** A module by its path: imported at the head or on the way, or a file beside it. */
const MODULE = /((?:\bfrom |^import |\bimport\(|\bnew URL\()'\.{1,2}\/[^']+)\.ts(')/gm;
/** A module that a page names: in an import of its front matter, or as the source of a script. */
const NAMED = /^(?!import type\b).*?['"](\.{1,2}\/[^'"\n]+\.ts)['"]/gm;

interface Lock {
  readonly packages: Readonly<
    Record<string, { readonly version?: string; readonly dev?: true; readonly devOptional?: true; readonly optional?: true }>
  >;
}

/**
 * Writes the package into a folder, which is emptied first:
 *
 * - plain JavaScript of all that Node runs, since it strips no types below node_modules;
 * - pages, and what pages and browsers need, as they stand here: the bundler then writes the same bytes;
 * - a package.json that pins every package of the lock file, since a lock file does not travel and a newer bundler writes other bytes.
 */
export function emitPackage(to: string): void {
  rmSync(to, { recursive: true, force: true });
  const files = filesOf(SRC);
  for (const path of files) emit(to, path);
  for (const path of openCode(SRC).neededBy(files.flatMap(entriesOfPages))) copy(to, join('src', path));
  for (const path of ['README.md', 'tsconfig.json']) copy(to, path);
  writeFileSync(join(to, 'src', 'soakproof.d.mts'), optionTypes());
  writeJson(join(to, 'src', PACKED_DIGESTS), codeDigests());
  writeJson(join(to, 'package.json'), packageJson());
}

/** The types of a publication's options, by which editors complete them: those of the code, in a file that needs no other. */
export function optionTypes(): string {
  const source = readFileSync(join(SRC, 'compute', 'project', 'site-options.ts'), 'utf8');
  const blocks = [
    /^const SECTIONS = .*;$/m,
    /^export type Section = .*;$/m,
    /\/\*\*[^/]*\*\/\nexport interface OwnLink \{.*?^\}$/ms,
    /\/\*\*[^/]*\*\/\nexport interface SiteOptions \{.*?^\}$/ms,
  ].map((block) => {
    const [found] = block.exec(source) ?? [];
    if (found === undefined) throw new Error(`src/compute/project/site-options.ts has nothing like ${block}`);
    return found;
  });
  const [sections = '', ...types] = blocks;
  const declared = `declare const SECTIONS: readonly ${sections.slice(sections.indexOf('['), sections.indexOf(']') + 1)};`;
  const front =
    '/** The configuration of a site, from the options of its author. */\nexport declare function publication(options: SiteOptions): object;';
  return `${[declared, ...types, front].join('\n\n')}\n`;
}

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.d\.m?ts$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
}

/** Types are erased, names of modules end in `.js`; whatever is not code stays as it is. Routes are the bundler's alone. */
function emit(to: string, path: string): void {
  if (extname(path) !== '.ts') copy(to, join('src', path));
  else if (!isRoute(path)) {
    const target = join(to, 'src', path.replace(/\.ts$/, '.js'));
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, javascript(readFileSync(join(SRC, path), 'utf8')));
  }
}

function copy(to: string, path: string): void {
  mkdirSync(dirname(join(to, path)), { recursive: true });
  cpSync(join(ROOT, path), join(to, path));
}

function isRoute(path: string): boolean {
  return path.startsWith(`pages${sep}`);
}

/** Modules by which the bundler enters our code. */
function entriesOfPages(path: string): string[] {
  if (extname(path) === '.ts') return isRoute(path) ? [path] : [];
  if (extname(path) !== '.astro') return [];
  return [...readFileSync(join(SRC, path), 'utf8').matchAll(NAMED)].map(([, named]) => join(dirname(path), named!));
}

/** As Node itself would run the file, line by line, with the names that its modules have in the package. */
function javascript(text: string): string {
  return stripTypeScriptTypes(text).replace(MODULE, '$1.js$2');
}

/** This project's, without what only a clone needs. */
function packageJson(): object {
  const { name, version, description, type, engines, bin, exports, allowScripts } = JSON.parse(
    readFileSync(join(ROOT, 'package.json'), 'utf8'),
  );
  return { name, version, description, type, engines, bin, exports, allowScripts, dependencies: testedPackages() };
}

/** Every package that lies at the top of node_modules and is needed on every machine. What is of one kind of machine is pinned by what needs it. */
function testedPackages(): Record<string, string> {
  const { packages } = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as Lock;
  const needed = Object.entries(packages).flatMap(([path, { version, dev, devOptional, optional }]) => {
    const [, name] = /^node_modules\/((?:@[^/]+\/)?[^/]+)$/.exec(path) ?? [];
    return name === undefined || version === undefined || dev || devOptional || optional ? [] : [[name, version] as const];
  });
  return Object.fromEntries(needed);
}

function writeJson(path: string, value: object): void {
  writeFileSync(path, `${JSON.stringify(value, null, 2)}\n`);
}
