/** The reference of the guide, made from what the code knows: schemas of front matter, forms of tables, directives, units, the catalogue, helps of commands. */
import { globSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { OPTIONS } from '../../src/compute/project/site-options.ts';
import { CATALOGUE } from '../../src/figures/catalogue.ts';
import { CONTACT_TIMES } from '../../src/figures/surface/touch-limits.ts';
import { TABLE_FORMS } from '../../src/figures/table-layout.ts';
import { QUANTITY_KINDS } from '../../src/intake/log.ts';
import { READ, SYMBOLS } from '../../src/quantities/unit-spellings.ts';
import { FRONT_MATTER } from '../../src/register/files/front-matter-shapes.ts';
import { PLOT_KINDS } from '../../src/register/requests.ts';
import { lineOf } from '../../src/register/values/key-line.ts';
import { type KeyFacts, keysOf } from '../../src/register/values/shape.ts';
import { FORMS, type Takes } from '../../src/register/values/takes.ts';
import { COLONS, DIRECTIVES } from '../../src/words/page/directive-names.ts';
import { HEDGES } from '../../src/words/stated/hedges.ts';

const ROOT = join(import.meta.dirname, '..', '..');
export const MADE = 'This page is made from the code, so it cannot be out of date.';

const code = (text: string) => `\`${text}\``;
const cell = (text: string) => text.replaceAll('|', '\\|');
const row = (cells: readonly string[]) => `| ${cells.map(cell).join(' | ')} |`;

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return [row(heads), row(heads.map(() => '---')), ...rows.map(row)].join('\n');
}

/** An example in one line of a table. */
function shown(fact: KeyFacts): string {
  const [first = '', below] = (lineOf(fact) ?? '').split('\n  ');
  return below === undefined ? code(first) : `${code(below)} below ${code(first)}`;
}

function typeOf(fact: KeyFacts): string {
  const { kinds, takes } = fact;
  const said = [
    ...(takes.words ? [takes.words.map(code).join(', ')] : []),
    ...(takes.quantity ? [`${takes.quantity.noun} with its unit (${takes.quantity.unit})`] : []),
    ...(takes.form ? [FORMS[takes.form]] : []),
    ...(takes.means ? [takes.means] : []),
  ];
  const several = kinds.includes('list') && kinds.includes('text') ? ', or a list of them' : '';
  const below = belowWords(takes);
  const words = `${said.join('; ')}${several}`;
  if (words === '') return below;
  return below === '' ? words : `${words}; ${below}`;
}

function belowWords({ keys, each }: Takes): string {
  if (keys) return `[the keys of ${keys.title}](#${slug(keys.title)})`;
  return each ? `each with [the keys of ${each.title}](#${slug(each.title)})` : '';
}

/** The address that a heading gets in a page. */
export function slug(title: string): string {
  return title
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');
}

function keyTable(facts: readonly KeyFacts[]): string {
  return table(
    ['key', 'says', 'value', 'where it is left out', 'example'],
    facts.map((fact) => [
      code(fact.key),
      fact.about,
      typeOf(fact),
      fact.required ? 'an error' : (fact.takes.otherwise ?? ''),
      lineOf(fact) === undefined ? '' : shown(fact),
    ]),
  );
}

/** Keys that another file has too, and that mean the same there. */
function alsoWords(facts: readonly KeyFacts[], told: ReadonlyMap<object, string>): string {
  const where = [...new Set(facts.map(({ entry }) => told.get(entry)!))];
  const sentences = where.map((title) => {
    const keys = facts
      .filter(({ entry }) => told.get(entry) === title)
      .map(({ key, required }) => (required ? `${code(key)} (needed)` : code(key)));
    const name = title.startsWith('content/') ? `${title}/<id>.md` : title;
    return `${keys.join(', ')} as in [${title.startsWith('content/') ? code(name) : name}](#${slug(name)})`;
  });
  return `And ${sentences.join('; ')}.`;
}

type Shape = { readonly entries: object };

/** Every shape that a file may hold, by its title: the file's own first, each once. */
export function shapesOf(): Map<string, { readonly shape: Shape; readonly facts: readonly KeyFacts[] }> {
  const found = new Map<string, { readonly shape: Shape; readonly facts: readonly KeyFacts[] }>();
  const visit = (title: string, shape: Shape): void => {
    if (found.has(title)) return;
    found.set(title, { shape, facts: keysOf(shape) });
  };
  for (const [folder, shape] of Object.entries(FRONT_MATTER)) visit(`content/${folder}`, shape);
  // A map is walked with what is added on the way.
  for (const { facts } of found.values())
    for (const { takes } of facts) {
      const below = takes.keys ?? takes.each;
      if (below) visit(below.title, below.shape);
    }
  return found;
}

export function keysPage(): string {
  const told = new Map<object, string>();
  const parts = [...shapesOf()].map(([title, { facts }]) => {
    const before = new Map(told);
    const head = title.startsWith('content/') ? code(`${title}/<id>.md`) : title[0]!.toUpperCase() + title.slice(1);
    const own = facts.filter((fact) => !told.has(fact.entry));
    const same = facts.filter((fact) => told.has(fact.entry));
    for (const { entry } of facts) told.set(entry, title);
    if (same.length === 0) return `## ${head}\n\n${keyTable(own)}`;
    return `## ${head}\n\n${keyTable(own)}\n\n${alsoWords(same, before)}`;
  });
  return page(
    'Reference: keys of front matter',
    'Each file in `content/` begins with YAML between two lines `---`. An id is the name of a file without `.md`.',
    parts,
  );
}

function page(title: string, lead: string, parts: readonly string[]): string {
  return `${[`# ${title}`, `${lead} ${MADE}`, ...parts].join('\n\n')}\n`;
}

const TITLES = { scores: 'Scores', surface: 'Surface readings', attempts: 'Attempts' } as const;

export function tablesPage(): string {
  const parts = Object.entries(TABLE_FORMS).map(([kind, { needed, columns }]) => {
    const rows = Object.entries(columns).map(([name, { about, example }]) => [
      code(name),
      needed.includes(name) ? 'yes' : '',
      about,
      code(example),
    ]);
    return `## ${TITLES[kind as keyof typeof TITLES]}\n\n${table(['column', 'needed', 'says', 'example'], rows)}`;
  });
  return page('Reference: columns of tables', 'A table that has other words [says once what they mean](tables.md).', parts);
}

export function directivesPage(): string {
  const parts = [...DIRECTIVES.values()].map(({ name, form, about, says, required, example }) => {
    const rows = Object.entries(says).map(([key, text]) => [code(key), required.includes(key) ? 'yes' : '', text]);
    const title = code(`${COLONS[form]}${name}`);
    const attributes = rows.length === 0 ? 'It takes no attributes.' : table(['attribute', 'needed', 'says'], rows);
    const kinds = name === 'plot' ? [`Kinds of chart: ${PLOT_KINDS.map(code).join(', ')}.`] : [];
    return [`## ${title}`, `${about[0]!.toUpperCase()}${about.slice(1)}: ${code(example)}`, attributes, ...kinds].join('\n\n');
  });
  return page(
    'Reference: directives',
    'Notes and scripts take these. [Numbers in words](numbers-in-words.md) shows them at work.',
    parts,
  );
}

export function wordsPage(): string {
  const units = [...SYMBOLS].map(([symbol, { of, prefixes }]) => [
    code(symbol),
    code(of),
    prefixes ? [...prefixes].map(code).join(' ') : '',
  ]);
  const read = [...READ].map(([unit, spellings]) => [code(unit), spellings.map(code).join(', ')]);
  const hedges = HEDGES.map(({ before, after, meaning, example }) => {
    const words = [...before.map((word) => `${word} …`), ...after.map((word) => `… ${word}`)];
    return [words.slice(0, 6).join(', '), meaning, example];
  });
  const contacts = Object.entries(CONTACT_TIMES).map(([word, time]) => [code(word), time]);
  return page('Reference: units and words', 'Units that are read, and words that have a meaning of their own.', [
    `## Quantities of channels\n\n${QUANTITY_KINDS.map(code).join(', ')}.`,
    `## Units\n\nTemperatures are read in °C, °F and K. Values are kept in the unit of the second column.\n\n${table(['unit', 'kept in', 'prefixes'], units)}`,
    `## Units that are printed\n\n${table(['kept in', 'printed in'], read)}`,
    `## Contacts of surface readings\n\n${table(['word', 'lasts'], contacts)}`,
    `## Words around a number\n\nSome of the words that widen or shift what a number allows; the method page of the site lists all of them with their intervals.\n\n${table(['words', 'meaning', 'example'], hedges)}`,
  ]);
}

export function figuresPage(): string {
  const subjects = [...new Set(CATALOGUE.map(({ subject }) => subject))];
  const parts = subjects.map((subject) => {
    const rows = CATALOGUE.filter((entry) => entry.subject === subject).map(({ name, label, unit, definition }) => [
      code(name),
      label,
      unit,
      definition,
    ]);
    return `## ${subject[0]!.toUpperCase()}${subject.slice(1)}\n\n${table(['figure', 'for readers', 'unit', 'definition'], rows)}`;
  });
  return page(
    'Reference: figures',
    'Each figure has an address: the name of a run in your note, then the figure, then the channel, phase, test or spot where there are several, such as `fast.peak_temperature.ssd`. The method page of the site adds formula, source and assumptions.',
    parts,
  );
}

/** Options of a publication, by their comments in the interface that editors show. */
export function optionsPage(): string {
  const source = readFileSync(join(ROOT, 'src/compute/project/site-options.ts'), 'utf8');
  const [, body = ''] = /export interface SiteOptions \{\n(.*?)^\}/ms.exec(source) ?? [];
  const rows = [...body.matchAll(/\/\*\* (.*?) \*\/\n {2}readonly (\w+)(\?)?: (.*);/g)].map(
    ([, says = '', name = '', optional, type = '']) => {
      return [code(name), says, code(type.replaceAll('readonly ', '')), optional === undefined ? 'an error' : ''];
    },
  );
  if (rows.length !== OPTIONS.length) throw new Error('an option of SiteOptions has no comment in one line');
  return page('Reference: options of the site', '`astro.config.mjs` exports `publication({ … })` with these.', [
    table(['option', 'says', 'value', 'where it is left out'], rows),
  ]);
}

/** Commands of contributors, who read of them in DEVELOPERS.md: their files lie below test. */
function ofContributors(): ReadonlySet<string> {
  const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { scripts: Record<string, string> };
  return new Set(Object.keys(scripts).filter((name) => scripts[name]!.startsWith('node test/')));
}

export function commandsPage(): string {
  const helps = globSync('*.txt', { cwd: join(ROOT, 'test/commands/help') }).sort();
  const contributors = ofContributors();
  const parts = helps
    .filter((file) => !contributors.has(basename(file, '.txt')))
    .map((file) => {
      const text = readFileSync(join(ROOT, 'test/commands/help', file), 'utf8').trimEnd();
      return `## ${code(basename(file, '.txt'))}\n\n\`\`\`text help\n${text}\n\`\`\``;
    });
  return page('Reference: commands', 'What each command says with `--help`.', parts);
}
