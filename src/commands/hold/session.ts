/** The dialogue: number by number, one key each. */
import type { Choice } from './apply.ts';
import type { ListedNumber } from './numbers.ts';

export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Whether marks may be set in bold. */
  readonly bold: boolean;
  /** The next key, in lower case; `cancel` at an interrupt, null at the end of input. */
  readonly key: () => Promise<string | null>;
}

/** Offers shown at once; `m` shows the others. */
const FIRST = 5;
/** Characters of the sentence shown on either side. */
const AROUND = 90;
const KEYS = '1 to 9 holds it by that, s or Enter skips, f leaves it free, b goes back, q ends and keeps what was chosen';

/** What the author chose, by number; null where he broke off and nothing is to be written. */
export async function choose(numbers: readonly ListedNumber[], terminal: Terminal): Promise<Map<number, Choice> | null> {
  const choices = new Map<number, Choice>();
  terminal.out(`${KEYS}\n`);
  for (let at = 0; at < numbers.length; ) {
    const number = numbers[at] as ListedNumber;
    terminal.out(`\n${heading(number, numbers.length)}\n${sentence(number, terminal.bold)}\n${offersText(number, FIRST)}`);
    const answer = await answerTo(number, terminal, at > 0);
    if (answer === 'cancel') return null;
    if (answer === 'quit') break;
    if (answer === 'back') {
      at -= 1;
      choices.delete((numbers[at] as ListedNumber).number);
      continue;
    }
    if (answer !== 'skip') choices.set(number.number, answer);
    at += 1;
  }
  return choices;
}

type Answer = Choice | 'skip' | 'back' | 'quit' | 'cancel';

async function answerTo(number: ListedNumber, terminal: Terminal, mayGoBack: boolean): Promise<Answer> {
  for (;;) {
    terminal.out('> ');
    const key = await terminal.key();
    terminal.out(key === null || key === 'cancel' ? '\n' : `${key}\n`);
    if (key === null || key === 'q') return 'quit';
    if (key === 'cancel') return 'cancel';
    if (key === 's' || key === '') return 'skip';
    if (key === 'b' && mayGoBack) return 'back';
    if (key === 'f' && number.why === undefined) return 'free';
    const offer = /^[1-9]$/.test(key) ? number.offers[Number(key) - 1] : undefined;
    if (offer) return { is: offer.is };
    if (key === 'm' && number.offers.length > FIRST) terminal.out(offersText(number, number.offers.length));
    else terminal.out(`  ${keysOf(number, mayGoBack)}\n`);
  }
}

function keysOf({ offers, why }: ListedNumber, mayGoBack: boolean): string {
  const choice = offers.length === 0 ? [] : [offers.length === 1 ? '1' : `1 to ${offers.length}`];
  return `keys here: ${[...choice, 's', ...(why === undefined ? ['f'] : []), ...(mayGoBack ? ['b'] : []), 'q'].join(', ')}`;
}

function heading({ number, line }: ListedNumber, count: number): string {
  return `${number} of ${count}, line ${line}`;
}

/** The sentence with the number marked. */
export function sentence({ before, words, after }: ListedNumber, bold: boolean): string {
  const head = before.length > AROUND ? `…${before.slice(-AROUND)}` : before;
  const tail = after.length > AROUND ? `${after.slice(0, AROUND)}…` : after;
  return `  ${head}${bold ? `\u001b[1m»${words}«\u001b[22m` : `»${words}«`}${tail}`;
}

function offersText({ offers, near, why }: ListedNumber, most: number): string {
  if (why !== undefined) return `  cannot be held as it stands: ${why}\n`;
  if (offers.length === 0) {
    const not = near.map(({ is, shown, title }) => `  not held by: ${is}  ${shown}  ${title}\n`);
    return `  nothing of this note fits: mend the number, add a run, or leave it free\n${not.join('')}`;
  }
  const shown = offers.slice(0, most);
  const widest = Math.max(...shown.map(({ is }) => is.length));
  const widestValue = Math.max(...shown.map((offer) => offer.shown.length));
  const lines = shown.map(
    ({ is, shown: value, title, narrow }, index) =>
      `  ${index + 1}  ${is.padEnd(widest)}  ${value.padEnd(widestValue)}  ${title}${narrow ? ', only narrowly' : ''}`,
  );
  const more = offers.length > most ? [`  m  ${offers.length - most} more`] : [];
  return `${[...lines, ...more].join('\n')}\n`;
}
