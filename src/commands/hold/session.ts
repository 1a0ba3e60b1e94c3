/** The dialogue: number by number, one key each. */

import { listed } from '../../figures/in-words.ts';
import type { Choice } from './apply.ts';
import { isRefused, type Refused } from './choices.ts';
import { groupsOf } from './groups.ts';
import type { ListedNumber } from './numbers.ts';
import type { Wanted } from './options.ts';

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
/** Places of a group that are shown with their sentences. */
const PLACES = 4;
const KEYS = `Press 1 to 9 to hold the number by that figure; v, then 1 to 9, to print the figure in place of the digits; w to take the words for a
near miss; s or Enter to skip, f to leave it free, o to take a group one by one, b to go back, q to end and keep what was chosen.`;

/** The choice for a number, or why it cannot be. */
export type Chooser = (listed: ListedNumber, wanted: Wanted) => Choice | Refused;

/** What the author chose, by number; null where he broke off and nothing is to be written. */
export async function choose(
  numbers: readonly ListedNumber[],
  terminal: Terminal,
  chooser: Chooser,
): Promise<Map<number, Choice> | null> {
  const choices = new Map<number, Choice>();
  const groups = groupsOf(numbers);
  const opening = await askForSure(groups, terminal);
  if (opening === 'cancel') return null;
  if (opening === 'q' || opening === null) return choices;
  if (opening === 'a') {
    for (const group of groups.splice(0)) {
      const chosen = isSure(group) ? forAll(group, SURE, chooser) : undefined;
      if (chosen === undefined || 'refused' in chosen) groups.push(group);
      else for (const [number, choice] of chosen) choices.set(number, choice);
    }
  }
  if (groups.length > 0) terminal.out(`${KEYS}\n`);
  for (let at = 0; at < groups.length; ) {
    const group = groups[at] as ListedNumber[];
    const first = group[0] as ListedNumber;
    terminal.out(`\n${heading(group, at + 1, groups.length)}\n${places(group, terminal.bold)}\n${offersText(first, FIRST)}`);
    const answer = await answerTo(group, { terminal, mayGoBack: at > 0, chooser });
    if (answer === 'cancel') return null;
    if (answer === 'quit') break;
    if (answer === 'back') {
      at -= 1;
      for (const { number } of groups[at] as ListedNumber[]) choices.delete(number);
    } else if (answer === 'one by one') {
      groups.splice(at, 1, ...group.map((each) => [each]));
    } else {
      for (const [number, choice] of answer) choices.set(number, choice);
      at += 1;
    }
  }
  return choices;
}

const SURE: Wanted = { offer: 1, as: 'stated' };
/** Fewer are as quickly taken one by one. */
const FEW = 3;

function isSure(group: readonly ListedNumber[]): boolean {
  return group.every(({ sure }) => sure);
}

/** Shows all that are sure at once, and answers with the key that the author pressed: `a` takes them together. '' where they are few. */
async function askForSure(groups: readonly (readonly ListedNumber[])[], { out, key }: Terminal): Promise<string | null> {
  const sure = groups.filter(isSure).flat();
  if (sure.length < FEW) return '';
  const cells = sure.map(({ line, words, offers: [first] }) => [`line ${line}`, words, first!.is, first!.shown] as const);
  const widths = [0, 1, 2].map((column) => Math.max(...cells.map((cell) => cell[column]!.length)));
  const rows = cells.map((cell) => `  ${cell.map((text, column) => text.padEnd(widths[column] ?? 0)).join('  ')}\n`);
  out(`\nThese ${sure.length} are sure, by the words around them:\n${rows.join('')}`);
  out('Press a to hold them all as shown, or another key to go through them with the rest.\n> ');
  const pressed = await key();
  out(pressed === null || pressed === 'cancel' ? '\n' : `${pressed}\n`);
  return pressed;
}

/** What is chosen for each of a group; none of it where it is skipped. */
type Chosen = ReadonlyMap<number, Choice>;
type Answer = Chosen | 'back' | 'one by one' | 'quit' | 'cancel';

interface Asking {
  readonly terminal: Terminal;
  readonly mayGoBack: boolean;
  readonly chooser: Chooser;
}

async function answerTo(group: readonly ListedNumber[], { terminal, mayGoBack, chooser }: Asking): Promise<Answer> {
  const first = group[0] as ListedNumber;
  let printing = false;
  for (;;) {
    terminal.out(printing ? 'value> ' : '> ');
    const key = await terminal.key();
    terminal.out(key === null || key === 'cancel' ? '\n' : `${key}\n`);
    if (key === null || key === 'q') return 'quit';
    if (key === 'cancel') return 'cancel';
    if (key === 's' || key === '') return new Map();
    if (key === 'b' && mayGoBack) return 'back';
    if (key === 'o' && group.length > 1) return 'one by one';
    const wanted = wantedBy(key, first, printing);
    if (wanted !== undefined) {
      const chosen = forAll(group, wanted, chooser);
      if (!('refused' in chosen)) return chosen;
      terminal.out(`  ${chosen.refused}\n`);
    } else if (key === 'v' && first.offers.length > 0) {
      printing = !printing;
    } else if (key === 'm' && first.offers.length > FIRST) {
      terminal.out(offersText(first, first.offers.length));
    } else {
      terminal.out(`  ${keysOf(group, mayGoBack)}\n`);
    }
  }
}

function wantedBy(key: string, { offers, near, why }: ListedNumber, printing: boolean): Wanted | undefined {
  if (key === 'f' && why === undefined) return 'free';
  if (key === 'w' && near[0]?.instead !== undefined) return { offer: 1, as: 'instead' };
  if (!/^[1-9]$/.test(key) || !offers[Number(key) - 1]) return undefined;
  return { offer: Number(key), as: printing ? 'value' : 'stated' };
}

/** The same choice for each of a group, or why one of them cannot have it. */
function forAll(group: readonly ListedNumber[], wanted: Wanted, chooser: Chooser): Chosen | Refused {
  const first = group[0] as ListedNumber;
  const is = wanted !== 'free' && 'offer' in wanted && wanted.as !== 'instead' ? first.offers[wanted.offer - 1]?.is : undefined;
  const chosen = new Map<number, Choice>();
  for (const listed of group) {
    const as = wanted !== 'free' && wanted.as === 'value' ? 'value' : 'stated';
    const choice = chooser(listed, is === undefined ? wanted : { is, as });
    if (isRefused(choice)) return choice;
    chosen.set(listed.number, choice);
  }
  return chosen;
}

function keysOf(group: readonly ListedNumber[], mayGoBack: boolean): string {
  const { offers, near, why } = group[0] as ListedNumber;
  const choice = offers.length === 0 ? [] : [offers.length === 1 ? '1' : `1 to ${offers.length}`, 'v'];
  const keys = [
    ...choice,
    ...(near[0]?.instead === undefined ? [] : ['w']),
    's',
    ...(why === undefined ? ['f'] : []),
    ...(group.length > 1 ? ['o'] : []),
    ...(mayGoBack ? ['b'] : []),
    'q',
  ];
  return `keys here: ${keys.join(', ')}`;
}

function heading(group: readonly ListedNumber[], at: number, count: number): string {
  const lines = [...new Set(group.map(({ line }) => line))];
  const all = lines.length === 1 ? `line ${lines[0]}` : `lines ${lines.slice(0, -1).join(', ')} and ${lines.at(-1)}`;
  return `${at} of ${count}, ${all}${group.length > 1 ? `: ${group.length} times, one answer for all` : ''}`;
}

function places(group: readonly ListedNumber[], bold: boolean): string {
  const shown = group.slice(0, PLACES).map((each) => sentence(each, bold));
  return [...shown, ...(group.length > PLACES ? [`  … and ${group.length - PLACES} more`] : [])].join('\n');
}

/** The sentence with the number marked. */
function sentence({ before, words, after }: ListedNumber, bold: boolean): string {
  const head = before.length > AROUND ? `…${before.slice(-AROUND)}` : before;
  const tail = after.length > AROUND ? `${after.slice(0, AROUND)}…` : after;
  return `  ${head}${bold ? `\u001b[1m»${words}«\u001b[22m` : `»${words}«`}${tail}`;
}

function offersText({ offers, named, near, why }: ListedNumber, most: number): string {
  if (why !== undefined) return `  cannot be held as it stands: ${why}\n`;
  const none = '  no figure of this note fits: correct the number, add a run, or leave it free\n';
  const other = named ? `  The sentence names ${listed(named)}; what fits is of other runs.\n` : '';
  return `${other}${offers.length === 0 ? none : fitting(offers, most)}${near.map(missText).join('')}`;
}

function fitting(offers: ListedNumber['offers'], most: number): string {
  const shown = offers.slice(0, most);
  const widest = Math.max(...shown.map(({ is }) => is.length));
  const widestValue = Math.max(...shown.map((offer) => offer.shown.length));
  const lines = shown.map(
    ({ is, shown: value, title, narrow }, index) =>
      `  ${index + 1}  ${is.padEnd(widest)}  ${value.padEnd(widestValue)}  ${title}${narrow ? ', but not for certain' : ''}`,
  );
  const more = offers.length > most ? [`  m  ${offers.length - most} more`] : [];
  return `${[...lines, ...more].join('\n')}\n`;
}

function missText({ is, shown, title, why, instead }: ListedNumber['near'][number], index: number): string {
  const rewrite =
    instead === undefined ? '' : index === 0 ? `; w writes "${instead}" and holds it by this` : `; "${instead}" would be true`;
  return `  not ${is}  ${shown}  ${title}: ${why}${rewrite}\n`;
}
