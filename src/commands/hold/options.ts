/** The command line of hold. */

/** What is to become of a number, as typed. */
export type Wanted =
  /** By the how-manieth offer; printed in the place of the digits, or with the words of a near miss. */
  | { readonly offer: number; readonly as: 'stated' | 'value' | 'instead' }
  | { readonly is: string; readonly as: 'stated' | 'value' }
  | 'free';

export interface Options {
  readonly file: string;
  /** Print the numbers and offers as JSON and change nothing. */
  readonly list: boolean;
  /** Take back what was written last. */
  readonly undo: boolean;
  readonly take: ReadonlyMap<number, Wanted>;
  /** Hold each number that is sure by what fits it first, where `take` does not say otherwise. */
  readonly sure: boolean;
}

export const USAGE = `npm run hold -- content/notes/x.md              asks, number by number
npm run hold -- content/notes/x.md --list       prints numbers and what fits them, as JSON
npm run hold -- content/notes/x.md --take 3=1   holds number 3 by the first that fits; 3=v1 prints its value in the place of
                                                the digits; 3=w1 takes the words for the first near miss; 3=free leaves it
                                                free; 3='fast.peak_temperature' holds it by an expression of yours
npm run hold -- content/notes/x.md --take sure  holds all that are sure by what fits first; sure,3=1 and number 3 besides
npm run hold -- content/notes/x.md --undo       takes back what hold wrote last
`;

/** Reads the arguments; a text says what is wrong with them. */
export function readOptions(args: readonly string[]): Options | string {
  const files: string[] = [];
  const take = new Map<number, Wanted>();
  let [list, undo, sure] = [false, false, false];
  for (let at = 0; at < args.length; at += 1) {
    const arg = args[at] as string;
    if (arg === '--list') list = true;
    else if (arg === '--undo') undo = true;
    else if (arg === '--take' || arg.startsWith('--take=')) {
      const written = arg === '--take' ? args[++at] : arg.slice('--take='.length);
      const items = (written ?? '').split(/,(?=\s*(?:\d+=|sure\s*(?:,|$)))/);
      const others = items.filter((item) => item.trim() !== 'sure');
      if (others.length < items.length) sure = true;
      for (const item of others) {
        const wrong = readTake(item, take);
        if (wrong !== undefined) return wrong;
      }
    } else if (arg.startsWith('-')) return `unknown option ${arg}`;
    else files.push(arg);
  }
  const [file, other] = files;
  if (file === undefined) return 'which note? Name one file';
  if (other !== undefined) return `one note at a time: ${files.join(', ')}`;
  const takes = sure || take.size > 0;
  if (list && takes) return '--list changes nothing: leave --take out, or --list';
  if (undo && (list || takes)) return '--undo stands alone: leave --list and --take out';
  return { file, list, undo, take, sure };
}

/** `3=1`, `5=free`, `3=fast.load_power - rated.load_power`. */
function readTake(item: string, take: Map<number, Wanted>): string | undefined {
  const [, number = '', choice = ''] = /^\s*(\d+)=(.+?)\s*$/.exec(item) ?? [];
  if (number === '') return `--take ${item}: write it as 3=1, 3=free or 3=fast.peak_temperature, or as sure`;
  if (take.has(Number(number))) return `--take names number ${number} twice`;
  take.set(Number(number), wantedOf(choice));
  return undefined;
}

const FORMS = { '': 'stated', v: 'value', w: 'instead' } as const;

function wantedOf(choice: string): Wanted {
  if (choice === 'free') return 'free';
  const [, form = '', offer] = /^([vw]?)(\d+)$/.exec(choice) ?? [];
  if (offer !== undefined) return { offer: Number(offer), as: FORMS[form as keyof typeof FORMS] };
  const value = /^:value\[(.+)\]$/.exec(choice)?.[1];
  return value === undefined ? { is: choice, as: 'stated' } : { is: value, as: 'value' };
}
