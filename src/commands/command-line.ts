/** What a command's line may hold, and its help: one description for both. */

export interface Command {
  /** As npm knows it: `publish`. */
  readonly name: string;
  /** What it does, in a sentence or two. */
  readonly does: string;
  /** What stands on the line besides options; the last one any number of times where `many`. */
  readonly takes?: readonly { readonly name: string; readonly is: string; readonly optional?: true; readonly many?: true }[];
  /** By name, with `--`; `value` names what must follow one. */
  readonly options?: Readonly<Record<string, { readonly value?: string; readonly does: string }>>;
  /** What each exit code means; 2, a line that is not understood, is the same for all. */
  readonly exits: Readonly<Record<number, string>>;
  readonly example: string;
}

const NOT_UNDERSTOOD = 'the command line is not understood';
const HELP = { '--help': { does: 'print this and do nothing' } };

/** Prints the help where it is asked for, or what is wrong with the line, and ends; else goes on. */
export function commandLine(command: Command, args: readonly string[] = process.argv.slice(2)): void {
  if (args.includes('--help')) {
    process.stdout.write(helpText(command));
    process.exit(0);
  }
  const fault = lineFault(command, args);
  if (fault === null) return;
  console.error(`${fault}. \`npm run ${command.name} -- --help\` says what it takes.`);
  process.exit(2);
}

/** Says what is wrong with a line that `commandLine` let through, and how it is written: a day that does not exist, options that exclude each other. */
export function notUnderstood({ err }: { err(text: string): void }, fault: string, usage: string): 2 {
  err(`${fault}\n${usage.trimEnd()}\n`);
  return 2;
}

/** What is wrong with a command line; null where nothing is. */
export function lineFault({ name, takes = [], options = {} }: Command, args: readonly string[]): string | null {
  const words: string[] = [];
  for (let at = 0; at < args.length; at++) {
    const arg = args[at]!;
    if (!/^-./.test(arg)) {
      words.push(arg);
      continue;
    }
    const [key = '', given] = arg.split(/=(.*)/s);
    const option = options[key];
    if (!option) return `\`npm run ${name}\` has no option ${key}`;
    if (option.value === undefined && given !== undefined) return `${key} takes no value, found ${given}`;
    if (option.value !== undefined && given === undefined && args[++at] === undefined)
      return `${key} needs a value: ${option.value}`;
  }
  const missing = takes.find((each, index) => !each.optional && words.length <= index);
  if (missing) return `\`npm run ${name}\` needs ${missing.name}: ${missing.is}`;
  if (takes.at(-1)?.many || words.length <= takes.length) return null;
  const most = takes.length === 0 ? 'no arguments' : takes.length === 1 ? 'one argument' : `${takes.length} arguments`;
  return `\`npm run ${name}\` takes ${most}, found ${words.join(' ')}`;
}

/** The help: how it is called, what it does, what it takes, its exit codes, an example. */
export function helpText({ name, does, takes = [], options = {}, exits, example }: Command): string {
  const words = takes.map(({ name: word, optional, many }) => {
    const whole = many ? `${word}…` : word;
    return optional ? `[${whole}]` : whole;
  });
  const named = Object.entries(options).map(([key, { value }]) => `[${value === undefined ? key : `${key} ${value}`}]`);
  const call = ['npm run', name, ...(words.length + named.length > 0 ? ['--', ...words, ...named] : [])].join(' ');
  const sections = [
    ['Arguments', takes.map(({ name: word, is }) => [word, is])],
    [
      'Options',
      Object.entries({ ...options, ...HELP }).map(([key, option]) => [
        'value' in option && option.value !== undefined ? `${key} ${option.value}` : key,
        option.does,
      ]),
    ],
    ['Exit codes', Object.entries({ 2: NOT_UNDERSTOOD, ...exits }).map(([code, means]) => [code, means])],
  ] as const;
  const blocks = sections.filter(([, rows]) => rows.length > 0).map(([title, rows]) => `${title}:\n${table(rows)}`);
  return `${[call, does, ...blocks, `Example:\n  ${example}`].join('\n\n')}\n`;
}

function table(rows: readonly (readonly (string | undefined)[])[]): string {
  const width = Math.max(...rows.map(([key = '']) => key.length));
  return rows.map(([key = '', text = '']) => `  ${key.padEnd(width)}  ${text}`).join('\n');
}
