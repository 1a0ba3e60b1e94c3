/** The command line of changes. */
import { parseArgs } from 'node:util';

export interface Options {
  /** `published`, `check`, or a revision of git. */
  readonly since: string;
  readonly json: boolean;
}

export const USAGE = `npm run changes                       against what was published
npm run changes -- --since check      against the last check or build without an error
npm run changes -- --since HEAD~3     against what was published at an earlier revision
npm run changes -- --json             the same as JSON
`;

/** Reads the arguments; a text says what is wrong with them. */
export function readOptions(args: readonly string[]): Options | string {
  try {
    const { values } = parseArgs({ args: [...args], options: { since: { type: 'string' }, json: { type: 'boolean' } } });
    const since = values.since ?? 'published';
    if (since === '' || since.startsWith('-')) return `--since ${since}: name \`check\` or a revision`;
    return { since, json: values.json ?? false };
  } catch (thrown) {
    return (thrown as Error).message;
  }
}
