/** Shifts each figure of the demonstration until a stated number or claim is false by a hair and by far, and within what it allows. */
import { cpSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { judgeScript } from '../../../src/compute/published-state/judge-script.ts';
import { presentState } from '../../../src/compute/published-state/present-state.ts';
import { noteSubjects } from '../../../src/compute/steps/notes/note-subjects.ts';
import { isPresent, type PresentFigure } from '../../../src/figures/figure.ts';
import type { Problem } from '../../../src/problem.ts';
import type { Note } from '../../../src/register/register.ts';
import { write } from '../../../src/words/write.ts';
import type { Subject } from '../../../src/words/written.ts';
import { shareResults } from '../../compute/shared-results.ts';
import { DEMONSTRATION } from '../../demonstration-folder.ts';
import { BENCHMARKS, GROUPS, LISTED } from './benchmark-statements.ts';
import { CLAIMS_IN_SCRIPT, IN_SCRIPT } from './script-statements.ts';
import { ADDED, CLAIMS, type ClaimCase, IN_NOTE, type Statement, type Values } from './statements.ts';

/** Far enough to be false, near enough that twelve digits tell. */
const HAIR = 1e-9;

const NOTE = 'content/notes/a-clock-it-cannot-keep.md';
const DOCUMENTS = [
  { what: 'the note', file: NOTE, own: IN_NOTE, added: ADDED, claims: CLAIMS, groups: [] },
  {
    what: 'benchmarks, lists and groups',
    file: NOTE,
    own: IN_NOTE,
    added: [...BENCHMARKS, ...LISTED],
    claims: [...CLAIMS, ...GROUPS],
    groups: GROUPS,
  },
  {
    what: 'the script',
    file: 'content/scripts/a-clock-it-cannot-keep.md',
    own: IN_SCRIPT,
    added: [],
    claims: CLAIMS_IN_SCRIPT,
    groups: [],
  },
] as const;

type Subjects = ReadonlyMap<string, Subject>;

interface Read {
  readonly whole: Note;
  /** With the paragraphs emptied that neither state nor claim anything: the lines stay, and a write takes a fifth of the time. */
  readonly note: Note;
  readonly subjects: Subjects;
}

/** A directive with its words; the unit too, where the number borrows one. */
function directive(name: 'stated' | 'claim', { words, is, unit }: { words: string; is: string; unit?: string }): string {
  const borrowed = unit === undefined ? '' : `unit='${unit}' `;
  return `:${name}[${words}]{${borrowed}is='${is}'}`;
}

async function readDemo(
  file: string,
  added: readonly (Statement & { readonly unit?: string })[],
  groups: readonly { readonly words: string; readonly is: string }[],
): Promise<Read> {
  const root = mkdtempSync(join(tmpdir(), 'soakproof-mutation-'));
  try {
    cpSync(join(DEMONSTRATION, 'content'), join(root, 'content'), { recursive: true });
    symlinkSync(join(DEMONSTRATION, 'data'), join(root, 'data'));
    shareResults(root);
    const read = await noteSubjects(root, file);
    if (!('note' in read)) throw new Error('the demonstration cannot be read');
    const sentences = [...added.map((each) => directive('stated', each)), ...groups.map((each) => directive('claim', each))];
    const whole = { ...read.note, text: [read.note.text, ...sentences.map((each) => `${each}.\n`)].join('\n') };
    const note = { ...keeping(whole, (paragraph) => /:(?:stated|claim)\[/.test(paragraph)), highlights: [] };
    return { whole, note, subjects: read.subjects };
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

/** The note with its other paragraphs emptied; the lines stay. */
function keeping(note: Note, keeps: (paragraph: string) => boolean): Note {
  const paragraphs = note.text.split('\n\n').map((each) => (keeps(each) ? each : each.replace(/[^\n]/g, '')));
  return { ...note, text: paragraphs.join('\n\n') };
}

/** The paragraphs that state or claim something of a figure. What rests on others cannot change with it, and is written once for each figure. */
function about(note: Note, address: string, stated: readonly Statement[], claims: readonly ClaimCase[], values: Values): Note {
  const restsOnIt = ({ at }: Statement) => {
    let rests = false;
    at((asked) => {
      rests ||= asked.replaceAll('"', '') === address.replaceAll('"', '');
      return values(asked);
    });
    return rests;
  };
  const words = [...stated.filter(restsOnIt), ...claims.filter(({ rests }) => rests.includes(address))].map((each) => each.words);
  return keeping(note, (paragraph) => words.some((each) => paragraph.includes(`[${each}]`)));
}

function figureOf(from: Subjects, address: string): PresentFigure {
  const [alias = '', ...rest] = address.replaceAll('"', '').split('.');
  const figure = from.get(alias)?.figures.get(rest.join('.'));
  if (!figure || !isPresent(figure)) throw new Error(`no figure ${address}`);
  return figure;
}

function valuesOf(from: Subjects): Values {
  return (address) => figureOf(from, address).quantity.value;
}

/** The subjects with one figure at another value; its uncertainty and interval go with it. */
function shifted(subjects: Subjects, address: string, to: number): Subjects {
  const figure = figureOf(subjects, address);
  const by = to - figure.quantity.value;
  const interval = figure.interval && ([figure.interval[0] + by, figure.interval[1] + by] as const);
  const moved: PresentFigure = { ...figure, quantity: { ...figure.quantity, value: to }, ...(interval ? { interval } : {}) };
  const [alias = '', ...rest] = address.replaceAll('"', '').split('.');
  const subject = subjects.get(alias) as Subject;
  return new Map(subjects).set(alias, { ...subject, figures: new Map(subject.figures).set(rest.join('.'), moved) });
}

function errorsOf(note: Note, from: Subjects): Problem[] {
  return write(note, from).problems.filter(({ severity }) => severity === 'error');
}

/** Where a directive stands, by its words. */
function placeOf({ text }: Note, words: string): string {
  const at = text.search(new RegExp(`:(?:stated|claim)\\[${words.replace(/[.*+?]/g, '\\$&')}\\]`));
  if (at < 0) throw new Error(`"${words}" is not in the note`);
  const lines = text.slice(0, at).split('\n');
  return `${lines.length}:${(lines.at(-1) as string).length + 1}`;
}

function allows({ at, lower, upper, lowerClosed, upperClosed }: Statement, values: Values): boolean {
  const value = Number(at(values).toPrecision(12));
  return (lowerClosed ? value >= lower : value > lower) && (upperClosed ? value <= upper : value < upper);
}

/** Targets for what is said, and whether the words allow them. */
function targetsOf({ lower, upper, lowerClosed, upperClosed }: Statement): (readonly [target: number, allowed: boolean])[] {
  const [low, high] = [Number.isFinite(lower), Number.isFinite(upper)];
  const width = low && high ? upper - lower : Math.max(1, Math.abs(low ? lower : upper) / 10);
  const from = low ? lower : upper - 4 * width;
  const to = high ? upper : lower + 4 * width;
  const within = [0.001, 0.2, 0.5, 0.8, 0.999].map((share) => [from + share * (to - from), true] as const);
  const hair = HAIR * Math.max(Math.abs(from), Math.abs(to));
  return [
    ...within,
    ...(low
      ? ([
          [lower, lowerClosed],
          [lower - hair, false],
          [lower + hair, true],
          [lower - 2.5 * width, false],
        ] as const)
      : []),
    ...(high
      ? ([
          [upper, upperClosed],
          [upper + hair, false],
          [upper - hair, true],
          [upper + 2.5 * width, false],
        ] as const)
      : []),
  ];
}

let cases = 0;

describe.each(DOCUMENTS)('words/mutation, $what', ({ file, own, added, claims, groups }) => {
  const all = [...own, ...added];
  let read: Read;
  beforeAll(async () => {
    read = await readDemo(file, added, groups);
  });

  test('it has these stated numbers and claims, and no other; as it stands, none of them fails', () => {
    const { whole, note, subjects } = read;
    // Counts of a group stand on no figure's value that could be shifted.
    const stated = [...whole.text.matchAll(/:stated\[([^\]]*)\](?!\{is=["'](?:kinds|count)\()/g)].map((match) => match[1]);
    expect(stated.toSorted()).toEqual(all.map(({ words }) => words).toSorted());
    const claimed = [...whole.text.matchAll(/:claim\[([^\]]*)\]/g)].map((match) => match[1]);
    expect(claimed.toSorted()).toEqual(claims.map(({ words }) => words).toSorted());
    expect(errorsOf(note, subjects)).toEqual([]);
    expect(errorsOf(whole, subjects)).toEqual([]);
  });

  test('stated numbers: false by a hair and by far fails at the right place, within what the words allow nothing does', () => {
    const { whole, note, subjects } = read;
    const plain = valuesOf(subjects);
    const misjudged: string[] = [];
    for (const statement of all) {
      for (const [address, solve] of Object.entries(statement.solve)) {
        const part = about(note, address, all, claims, plain);
        for (const [index, [target, allowed]] of targetsOf(statement).entries()) {
          const moved = shifted(subjects, address, solve(target, plain));
          const values = valuesOf(moved);
          const expected = all.filter((each) => !allows(each, values)).map(({ words }) => placeOf(whole, words));
          const others = claims.filter(({ rests }) => rests.includes(address)).map(({ words }) => placeOf(whole, words));
          const found = errorsOf(index === 0 ? note : part, moved).map(({ place, rule }) => ({
            at: `${place.line}:${place.column}`,
            rule,
          }));
          const right =
            expected.includes(placeOf(whole, statement.words)) !== allowed &&
            found.every(({ at, rule }) => (rule === 'stated-differs' ? expected.includes(at) : others.includes(at))) &&
            expected.every((at) => found.some((each) => each.at === at && each.rule === 'stated-differs'));
          if (!right) misjudged.push(`${statement.words}: ${address} so that it is ${target}: ${JSON.stringify(found)}`);
          cases += 1;
        }
      }
    }
    expect(misjudged).toEqual([]);
  });

  test('claims: false by a hair and by far fails at the right place, clear of its condition nothing does', () => {
    const { whole, note, subjects } = read;
    const plain = valuesOf(subjects);
    const misjudged = claims.flatMap(({ words, cases: shifts }) =>
      shifts.flatMap(([address, to, fails]) => {
        cases += 1;
        const moved = shifted(subjects, address, to(plain));
        const stated = all.filter((each) => !allows(each, valuesOf(moved))).map((each) => placeOf(whole, each.words));
        const found = errorsOf(note, moved).map(({ place }) => `${place.line}:${place.column}`);
        const expected = [...stated, ...(fails ? [placeOf(whole, words)] : [])];
        const right = found.toSorted().join(' ') === expected.toSorted().join(' ');
        return right ? [] : [`${words}: ${address} at ${to(plain)}: ${found.join(' ')} for ${expected.join(' ')}`];
      }),
    );
    expect(misjudged).toEqual([]);
  });

  test('published as a script, what is false is a correction, what the words allow is none', () => {
    const { note, subjects } = read;
    const plain = valuesOf(subjects);
    const sources = { of: () => [], sha256: () => '' };
    const stand = (script: Note, from: Subjects) => {
      const written = write(script, from);
      return { written, present: presentState({ note: script, written }, [], sources) };
    };
    const misjudged: string[] = [];
    for (const statement of all) {
      const [address, solve] = Object.entries(statement.solve)[0]!;
      const targets = targetsOf(statement);
      const script: Note = { ...about(note, address, all, claims, plain), kind: 'script' };
      const then = stand(script, subjects).present;
      for (const [target] of [targets[2]!, ...targets.filter(([, allowed]) => !allowed)]) {
        const moved = shifted(subjects, address, solve(target, plain));
        const { written, present } = stand(script, moved);
        const { corrections, written: recorded } = judgeScript(script, written, then, present, () => '');
        const ofWords = corrections.filter(({ was }) => all.some(({ words }) => words === was)).map(({ was }) => was);
        const expected = all.filter((each) => !allows(each, valuesOf(moved))).map(({ words }) => words);
        if (ofWords.toSorted().join() !== expected.toSorted().join())
          misjudged.push(`${statement.words} at ${target}: ${ofWords.join()} for ${expected.join()}`);
        const errors = recorded.problems.filter(({ severity }) => severity === 'error');
        if (errors.length > 0) misjudged.push(`${statement.words} at ${target}: ${errors.map(({ found }) => found).join()}`);
        cases += 1;
      }
    }
    expect(misjudged).toEqual([]);
  });
});

test('words/mutation: five hundred cases and more', () => {
  expect(cases).toBeGreaterThanOrEqual(500);
});
