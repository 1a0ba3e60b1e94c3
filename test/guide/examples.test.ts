/** Every example of the guide is read by the code that it is an example of. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { optionFaults } from '../../src/compute/project/site-options.ts';
import { readScores } from '../../src/figures/scores/read-scores.ts';
import { readAttempts } from '../../src/figures/stability/read-attempts.ts';
import { readSurface } from '../../src/figures/surface/read-surface.ts';
import { DIRECTIVES } from '../../src/words/page/directive-names.ts';
import { write } from '../../src/words/write.ts';
import { noteOf } from '../words/subjects.ts';
import { fileOf, IDS, problemsWith } from './content-files.ts';
import { CODES, FENCES, type Fence, fencesOf, GUIDE, OPENED, PAGES, textOf } from './fences.ts';
import { SUBJECTS } from './guide-subjects.ts';
import { folderFile, serverBlock } from './recipes.ts';
import { slug } from './reference.ts';

const ROOT = join(import.meta.dirname, '../..');

/** Folder of content/ by the kind of a fence. */
const FOLDERS: Readonly<Record<string, string>> = {
  device: 'devices',
  instrument: 'instruments',
  setup: 'setups',
  run: 'runs',
  attempts: 'attempts',
  comparison: 'comparisons',
  quoted: 'quoted',
  note: 'notes',
  script: 'scripts',
};
const YAML = Object.keys(FOLDERS).map((kind) => `yaml ${kind}`);
/** Fences that a test reads: here, in reference.test.ts (help), and in walk.stage.test.ts (a whole note, data, printed). */
const READ = [
  ...YAML,
  'markdown words',
  'markdown script',
  'markdown picture',
  'markdown note',
  'csv scores',
  'csv surface',
  'csv attempts',
  'sh',
  'text layout',
  'text help',
  'text data',
  'text printed',
  'js options',
  'text server',
];

/** What `at` and `within` are places of. */
const IMAGE = { file: 'data/image.csv', width: 96, height: 72, values: new Float64Array(96 * 72).fill(59.3), step: 0.1, others: 0 };

const named = (fences: readonly Fence[]) => fences.map((fence) => ({ ...fence, name: `${fence.page}:${fence.line}` }));

function errorsOf(text: string, kind: 'note' | 'script' = 'note'): string[] {
  const { problems } = write(noteOf(text, { kind }), SUBJECTS, { unheld: false });
  return problems.map(({ rule, found }) => `${rule}: ${found}`);
}

describe('the guide', () => {
  it('has no example that no test reads', () => {
    expect(FENCES.length).toBe(OPENED);
    expect(FENCES.filter(({ kind }) => !READ.includes(kind)).map(({ page, line, kind }) => `${page}:${line} ${kind}`)).toEqual([]);
    expect(READ.filter((kind) => fencesOf(kind).length === 0)).toEqual([]);
  });

  it.each(named(fencesOf(...YAML)))('$name: front matter', ({ kind, text }) => {
    const folder = FOLDERS[kind.slice('yaml '.length)]!;
    expect(problemsWith(fileOf(folder, IDS[folder]![0]!, text.trimEnd()))).toEqual([]);
  });

  it.each(named(fencesOf('markdown words', 'markdown script', 'markdown picture')))('$name: words', ({ kind, text }) => {
    expect(errorsOf(text, kind === 'markdown script' ? 'script' : 'note')).toEqual([]);
  });

  it.each(named(fencesOf('csv scores', 'csv surface', 'csv attempts')))('$name: a table', ({ kind, text }) => {
    const bytes = new TextEncoder().encode(text);
    const read = {
      'csv scores': () => readScores(bytes, 'data/scores.csv'),
      'csv surface': () => readSurface(bytes, 'data/surface.csv', undefined, undefined, IMAGE),
      'csv attempts': () => readAttempts(bytes, 'data/attempts.csv', 'no-1'),
    }[kind]!();
    expect(read.problems).toEqual([]);
  });

  it.each(named(fencesOf('sh')))('$name: commands', ({ text }) => {
    const scripts = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).scripts as Record<string, string>;
    for (const line of text.trimEnd().split('\n')) {
      const [, command = '', rest = ''] = /^npm run (\S+)(?: -- (.*))?$/.exec(line) ?? [];
      expect(scripts[command], line).toBeDefined();
      const help = readFileSync(join(ROOT, 'test/commands/help', `${command}.txt`), 'utf8');
      for (const option of rest.match(/(?<= |^)--[\w-]+/g) ?? []) expect(help, line).toContain(`\n  ${option}`);
      const words = rest.replaceAll(/(?<= |^)--[\w-]+ (?:"[^"]*"|\S+)/g, '').trim();
      if (words !== '') expect(help, line).toContain('\nArguments:');
    }
  });

  it.each(named(fencesOf('js options')))('$name: options', ({ text }) => {
    const [, options = ''] = /export default publication\((\{.*\})\);/s.exec(text) ?? [];
    expect(optionFaults(new Function(`return ${options}`)())).toEqual([]);
  });

  it('shows what a server needs, as the site asks for it', () => {
    expect(fencesOf('text server').map(({ text }) => text)).toEqual([folderFile(), serverBlock()]);
  });

  it.each(named(fencesOf('text layout')))('$name: the folders of content/', ({ text }) => {
    const folders = [...text.matchAll(/^content\/(\w+)\/<id>\.md /gm)].map(([, folder]) => folder);
    expect(folders).toEqual(Object.values(FOLDERS));
  });

  const directives = CODES.filter(
    ({ code }) => new RegExp(`^:{1,3}(?:${[...DIRECTIVES.keys()].join('|')})[[{]`).test(code) && !code.includes('…'),
  );
  it('shows each directive at work', () => {
    const shown = directives.map(({ code }) => code.match(/\w+/)![0]);
    expect([...DIRECTIVES.keys()].filter((name) => !shown.includes(name))).toEqual([]);
  });

  it.each(directives.map(({ page, code }) => ({ name: `${page}: ${code}`, code })))('$name', ({ code }) => {
    const container = code.startsWith(':::');
    const text = container ? `${code}\nWhat is seen.\n:::\n` : code.startsWith('::') ? `${code}\n` : `It is ${code} here.\n`;
    expect(errorsOf(`${text}`, container ? 'script' : 'note')).toEqual([]);
  });

  it('has links that lead somewhere', () => {
    const lost = PAGES.flatMap((page) =>
      [
        ...textOf(page)
          .replaceAll(/^```[\s\S]*?^```$/gm, '')
          .matchAll(/\]\(([^)\s]+)\)/g),
      ].flatMap(([, link = '']) => {
        const [path = '', anchor] = link.split('#');
        const file = path === '' ? page : path;
        if (!existsSync(join(GUIDE, file))) return [`${page}: ${link}`];
        const headings = [...textOf(file).matchAll(/^#+ (.*)$/gm)].map(([, title]) => slug(title!));
        return anchor === undefined || headings.includes(anchor) ? [] : [`${page}: ${link}`];
      }),
    );
    expect(lost).toEqual([]);
  });

  it('is listed whole on its first page, which README.md leads to', () => {
    const listed = [...textOf('README.md').matchAll(/\]\(([\w-]+\.md)\)/g)].map(([, page]) => page);
    expect(PAGES.filter((page) => page !== 'README.md' && !listed.includes(page))).toEqual([]);
    const readme = readFileSync(join(ROOT, 'README.md'), 'utf8');
    const lost = [...readme.matchAll(/\]\(([^)#\s]+)\)/g)]
      .map(([, path]) => path!)
      .filter((path) => !existsSync(join(dirname(join(ROOT, 'README.md')), path)));
    expect(lost).toEqual([]);
    expect(readme).toContain('src/guide/README.md');
  });
});
