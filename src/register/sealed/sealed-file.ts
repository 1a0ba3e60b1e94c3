/** Files that a command wrote as sealed JSON and that nobody edits by hand: their form, and what is told of one that was edited. */
import * as v from 'valibot';
import { error, type Place, type Problem } from '../../problem.ts';

/** A kind of such files. */
export interface SealedKind {
  /** Of all its problems. */
  readonly rule: string;
  /** "published state". */
  readonly noun: string;
  /** What writes it: "npm run publish". */
  readonly command: string;
  readonly remedy: string;
}

/** Reads a file as far as its form goes. A problem where it is not JSON, or JSON of another form. */
export function readForm<S extends v.GenericSchema>(
  schema: S,
  source: string,
  file: string,
  kind: SealedKind,
): v.InferOutput<S> | Problem {
  let json: unknown;
  try {
    json = JSON.parse(source);
  } catch (thrown) {
    const offset = Number(/position (\d+)/.exec(String(thrown))?.[1] ?? 0);
    return error(kind.rule, placeOf(source, file, offset), 'this is not JSON', { remedy: kind.remedy });
  }
  const checked = v.safeParse(schema, json, { abortEarly: true });
  if (checked.success) return checked.output;
  return error(
    kind.rule,
    { file, line: 1, column: 1 },
    `this is not ${/^[aeiou]/.test(kind.noun) ? 'an' : 'a'} ${kind.noun}: ${inWords(checked.issues[0])}`,
    {
      remedy: kind.remedy,
    },
  );
}

/** The problem of a file that is not as its command wrote it. */
export function edited(file: string, { rule, noun, command, remedy }: SealedKind): Problem {
  return error(rule, { file, line: 1, column: 1 }, `this ${noun} is not as \`${command}\` wrote it`, {
    expected: 'its own digest over all that it holds',
    remedy,
  });
}

/** Whether what was read of a file is a problem. */
export function isProblem<T extends object>(read: T | Problem): read is Problem {
  return 'severity' in read;
}

function inWords(issue: v.BaseIssue<unknown>): string {
  const path = (issue.path ?? []).map(({ key }) => String(key)).join('.');
  const at = path === '' ? '' : `at \`${shortened(path)}\` `;
  if (issue.kind === 'validation') return `${at}${issue.message}`;
  return `${at}${shortened(issue.received)} where ${shortened(issue.expected ?? 'something else')} belongs`;
}

/** What a file holds may be as long as the file. */
function shortened(text: string): string {
  return text.length <= 120 ? text : `${text.slice(0, 120)}…`;
}

function placeOf(source: string, file: string, offset: number): Place {
  const before = source.slice(0, offset);
  return { file, line: before.split('\n').length, column: offset - (before.lastIndexOf('\n') + 1) + 1 };
}
