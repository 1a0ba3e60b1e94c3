/** One log for another: what `changes` tells against what differs between the pages and ledgers of two sites. */
import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { compute } from '../../src/compute/compute.ts';
import type { NoteChanges } from '../../src/compute/published-state/changes.ts';
import type { Manifest, NoteModel, ScriptModel } from '../../src/compute/results.ts';
import type { Problem } from '../../src/problem.ts';
import { copyProject, type TestProject } from './project.ts';

const RATED = 'data/larch-2/rated-soak.csv';
/** Of another firmware, logged in the same form. */
const PREVIEW = 'data/larch-2/preview-soak.csv';

interface Printed {
  /** By `notes/<slug>` or `scripts/<slug>`: the sentences of the page that hold a number, in order. */
  readonly sentences: ReadonlyMap<string, readonly string[]>;
  /** Numbers of the ledger beside the page. */
  readonly ledgers: ReadonlyMap<string, readonly Entry[]>;
  /** Digest of each plot's picture by its address. */
  readonly plots: ReadonlyMap<string, string>;
  /** "content/notes/x.md:12:3 stated-differs". */
  readonly errors: readonly string[];
}

interface Entry {
  readonly kind: string;
  readonly expression: string;
  readonly value: number;
  readonly shown: string;
}

let project: TestProject;
let before: Printed;
let after: Printed;
let told: readonly NoteChanges[];
let sincePublished: readonly NoteChanges[];

beforeAll(async () => {
  project = copyProject('swap');
  expect(project.run('check').err).not.toContain(': error:');
  before = printed(await compute(project.root, 'site'));
  copyFileSync(join(project.root, PREVIEW), join(project.root, RATED));
  told = changes('--since', 'check');
  sincePublished = changes();
  project.unprotect();
  after = printed(await compute(project.root, 'site'));
});
afterAll(() => project.remove());

function changes(...args: string[]): readonly NoteChanges[] {
  const ran = project.run('changes', {}, ['--json', ...args]);
  expect(ran.err).toBe('');
  return (JSON.parse(ran.out) as { notes: NoteChanges[] }).notes;
}

function printed(manifest: Manifest): Printed {
  const blob = (digest: string) => project.read(`.cache/blobs/${digest}`);
  const pages = manifest.pages.filter(({ kind }) => kind === 'note' || kind === 'script');
  const name = (path: string) => path.replace(/\/$/, '');
  const file = (path: string) => manifest.files.find((each) => each.path === path)!.blob;
  return {
    sentences: new Map(
      pages.map(({ path, blob: model }) => [name(path), heldSentences(JSON.parse(blob(model)) as NoteModel | ScriptModel)]),
    ),
    ledgers: new Map(
      pages.map(({ path }) => [name(path), (JSON.parse(blob(file(`${path}ledger.json`))) as { entries: Entry[] }).entries]),
    ),
    plots: new Map(manifest.files.filter(({ path }) => path.endsWith('.svg')).map(({ path, blob: digest }) => [path, digest])),
    errors: manifest.problems
      .filter(({ severity }) => severity === 'error')
      .map(
        ({ place, rule }) => `${place.file}:${place.line}:${rule === 'absent-figure' ? directiveAt(place) : place.column} ${rule}`,
      ),
  };
}

/** Where the directive begins whose attribute has the problem. */
function directiveAt({ file, line, column }: Problem['place']): number {
  return project.read(file).split('\n')[line - 1]!.lastIndexOf(':stated[', column) + 1;
}

function keyOf({ kind, expression }: Entry): string {
  return `${kind} ${expression}`;
}

/** The page in one text with a line a block, numbers of scripts as they print; split into sentences, without a word of our own code. */
function heldSentences(model: NoteModel | ScriptModel): string[] {
  const shown = new Map(model.heldNotes.map((note) => [note.number, note.shown]));
  const html = (pieces: readonly unknown[]): string =>
    pieces
      .map((piece) => (typeof piece === 'string' ? piece : isNumber(piece) ? `¤${shown.get(piece.number)}` : '<p></p>'))
      .join('');
  const body = model.kind === 'note' ? html(model.pieces) : model.blocks.map(({ pieces }) => `${html(pieces)}<p></p>`).join('');
  const text = `<p>${html(model.front.title)}</p><p>${html(model.front.summary)}</p>${body}<p>${html(model.front.disclosure)}</p>`
    .replaceAll(/<a class="held"[^>]*>/g, '¤')
    // A stated number whose figure is absent by now is put back as it was written.
    .replaceAll(/:stated\[([^\]]*)\]\{[^}]*\}/g, '¤$1')
    .replaceAll(/\s+/g, (blanks) => (blanks === '\u00a0' ? blanks : ' '))
    .replaceAll(/<th scope="row">(.*?)<\/th>(.*?)<\/tr>/g, (_all, head: string, cells: string) =>
      cells.replaceAll('<td class="number">', `\n${head.replaceAll(/<[^>]*>/g, '')}: `),
    )
    .replaceAll(/<\/?(?:p|li|ul|ol|h\d|table|caption|tr|td|th|thead|tbody|figure|div)\b[^>]*>/g, '\n')
    .replaceAll(/<[^>]*>/g, '')
    .replaceAll('&#x26;', '&')
    .replaceAll('&#x3C;', '<');
  return text
    .split('\n')
    .flatMap((block) => block.split(/(?<=[.?!]) (?=[A-Z¤])/))
    .filter((sentence) => sentence.includes('¤'))
    .map((sentence) => sentence.replaceAll('¤', '').trim());
}

function isNumber(piece: unknown): piece is { readonly number: number } {
  return typeof piece === 'object' && piece !== null && 'number' in piece;
}

/** Every pair that differs, each once. */
function changedPairs(name: string): string[] {
  const [was, is] = [before.sentences.get(name)!, after.sentences.get(name)!];
  expect(is.length).toBe(was.length);
  const pairs = was.map((sentence, index) => `${sentence}\n${is[index]}`);
  return [...new Set(pairs.filter((_, index) => was[index] !== is[index]))].sort();
}

describe('npm run changes after one log was swapped for another', () => {
  it('names the notes that print the run, and no other', () => {
    expect(told.map(({ of }) => of)).toEqual([
      'notes/a-clock-it-cannot-keep',
      'notes/a-second-larch',
      'scripts/a-clock-it-cannot-keep',
    ]);
  });

  it('names exactly the sentences that change, before and after', () => {
    for (const { of, sentences } of told) {
      expect(sentences.map(({ before: was, after: is }) => `${was}\n${is}`).toSorted()).toEqual(changedPairs(of));
    }
    expect(told.flatMap(({ sentences }) => sentences).length).toBeGreaterThan(20);
  });

  it('names exactly the figures whose value is another', () => {
    for (const { of, figures } of told) {
      const is = after.ledgers.get(of)!;
      const still = new Set(is.map(keyOf));
      const was = before.ledgers.get(of)!.filter((entry) => still.has(keyOf(entry)));
      expect(is.map(keyOf)).toEqual(was.map(keyOf));
      const moved = is.filter(({ kind, value }, index) => {
        const then = was[index]!.value;
        return kind !== 'stated' && kind !== 'claim' && Math.abs(value - then) > 1e-9 * Math.max(Math.abs(value), Math.abs(then));
      });
      const names = (some: readonly string[]) => [...new Set(some)].sort();
      expect(names(figures.map(({ number }) => number))).toEqual(names(moved.map(({ expression }) => expression)));
    }
  });

  it('names exactly the stated numbers and claims that no longer hold, and the plots that changed', () => {
    expect(before.errors).toEqual([]);
    const places = told.flatMap(({ of, noLongerHeld }) =>
      noLongerHeld.map(({ line, column }) => `content/${of}.md:${line}:${column}`),
    );
    expect(after.errors.some((error) => error.endsWith(' absent-figure'))).toBe(true);
    expect(places.toSorted()).toEqual(after.errors.map((error) => error.split(' ')[0]!).toSorted());
    const plots = told.flatMap(({ of, plots: some }) => some.map(({ id, how }) => `${how} ${of}/plots/${id}.svg`));
    const changed = [...after.plots].filter(
      ([path, digest]) => /^(?:notes|scripts)\//.test(path) && before.plots.get(path) !== digest,
    );
    expect(plots.toSorted()).toEqual(changed.map(([path]) => `changed ${path}`).toSorted());
    expect(plots.length).toBeGreaterThan(0);
  });

  it('names the same sentences against what was published', () => {
    const words = (some: readonly NoteChanges[]) =>
      some.map(({ of, sentences, noLongerHeld }) => ({ of, sentences, noLongerHeld }));
    expect(words(sincePublished)).toEqual(words(told));
  });

  it('tells nothing as new or gone', () => {
    expect(told.flatMap(({ added, removed }) => [...added, ...removed])).toEqual([]);
  });
});
