/** The command line of hold. */
import type { Choice } from './apply.ts';

export interface Options {
  readonly file: string;
  /** Print the numbers and offers as JSON and change nothing. */
  readonly list: boolean;
  /** By number: the how-manieth offer, an expression, or `free`. */
  readonly take: ReadonlyMap<number, number | Choice>;
}

export const USAGE = `npm run hold -- content/notes/x.md              asks, number by number
npm run hold -- content/notes/x.md --list       prints numbers and what fits them, as JSON
npm run hold -- content/notes/x.md --take 3=1   holds number 3 by the first that fits; 3=free leaves it free,
                                                3='fast.peak_temperature' holds it by an expression of yours
`;

/** Reads the arguments; a text says what is wrong with them. */
export function readOptions(args: readonly string[]): Options | string {
  const files: string[] = [];
  const take = new Map<number, number | Choice>();
  let list = false;
  for (let at = 0; at < args.length; at += 1) {
    const arg = args[at] as string;
    if (arg === '--list') list = true;
    else if (arg === '--take' || arg.startsWith('--take=')) {
      const written = arg === '--take' ? args[++at] : arg.slice('--take='.length);
      const wrong = readTake(written ?? '', take);
      if (wrong !== undefined) return wrong;
    } else if (arg.startsWith('-')) return `unknown option ${arg}`;
    else files.push(arg);
  }
  const [file, other] = files;
  if (file === undefined) return 'which note? Name one file';
  if (other !== undefined) return `one note at a time: ${files.join(', ')}`;
  if (list && take.size > 0) return '--list changes nothing: leave --take out, or --list';
  return { file, list, take };
}

/** `3=1`, `3=1,5=free`, `3=fast.load_power - rated.load_power`. */
function readTake(written: string, take: Map<number, number | Choice>): string | undefined {
  for (const item of written.split(/,(?=\s*\d+=)/)) {
    const [, number = '', choice = ''] = /^\s*(\d+)=(.+?)\s*$/.exec(item) ?? [];
    if (number === '') return `--take ${item}: write it as 3=1, 3=free or 3=fast.peak_temperature`;
    if (take.has(Number(number))) return `--take names number ${number} twice`;
    take.set(Number(number), /^\d+$/.test(choice) ? Number(choice) : choice === 'free' ? 'free' : { is: choice });
  }
  return undefined;
}
