import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { holdNote } from '../../../src/commands/hold/hold-note.ts';
import { shareResults } from '../../compute/shared-results.ts';
import { demoProject } from './demo.ts';
import { TWENTY } from './twenty.ts';

const FRONT = `---
title: Plain words
date: 2026-04-01
status: draft
runs:
  rated: larch-rated
  brisk: larch-brisk
  quick: larch-quick
  fast: larch-fast
comparisons:
  steps: larch-steps
---

`;

interface Listed {
  readonly numbers: readonly {
    readonly number: number;
    readonly line: number;
    readonly column: number;
    readonly words: string;
    readonly why?: string;
    readonly sure?: true;
    readonly near?: readonly { readonly is: string; readonly shown: string; readonly title: string }[];
    readonly offers: readonly { readonly offer: number; readonly is: string; readonly shown: string; readonly narrow: boolean }[];
  }[];
}

let project: ReturnType<typeof demoProject>;
beforeAll(() => {
  project = demoProject();
  shareResults(project.root);
});
afterAll(() => project.remove());

/** Runs the command on a note with that text; keys as they would be pressed. */
async function hold(text: string, args: readonly string[], keys: readonly (string | null)[] = []) {
  const path = join(project.root, 'content/notes/plain.md');
  writeFileSync(path, text);
  let out = '';
  let err = '';
  let at = 0;
  const code = await holdNote(project.root, ['content/notes/plain.md', ...args], {
    out: (more) => (out += more),
    err: (more) => (err += more),
    bold: false,
    key: async () => keys[at++] ?? null,
  });
  return { code, out, err, text: readFileSync(path, 'utf8') };
}

async function list(text: string): Promise<Listed['numbers']> {
  const { out } = await hold(text, ['--list']);
  return (JSON.parse(out) as Listed).numbers;
}

describe('commands/hold/hold-note', () => {
  const paragraphs = TWENTY.map(([sentence]) => sentence);
  const prose = [0, 4, 8, 12, 16].map((at) => paragraphs.slice(at, at + 4).join('\n')).join('\n\n');
  const meant = TWENTY.flatMap(([, numbers]) => numbers);

  test('of twenty plain sentences every number that a figure bears is offered the right one among its first three', async () => {
    const numbers = await list(`${FRONT}${prose}\n`);
    expect(numbers.map(({ words }) => words)).toEqual(meant.map(([words]) => words));
    const missed = numbers.flatMap(({ words, offers }, index) => {
      const is = meant[index]?.[1] ?? null;
      const first = offers.slice(0, 3).map((offer) => offer.is);
      const right = is === null ? offers.length === 0 : first.includes(is);
      return right ? [] : [`${words}: ${is} among ${first.join(' | ')}`];
    });
    expect(missed).toEqual([]);
  });

  test('what is sure is shown at once and held by one key, or by one word of the command line; it is right', async () => {
    const text = `${FRONT}${prose}\n`;
    const numbers = await list(text);
    const sure = numbers.flatMap(({ sure: isSure, offers: [first] }, index) =>
      isSure ? [[first?.is, meant[index]?.[1]] as const] : [],
    );
    expect(sure.length).toBeGreaterThan(numbers.length / 3);
    expect(sure.filter(([offered, is]) => offered !== is)).toEqual([]);
    const taken = await hold(text, ['--take', 'sure']);
    expect(taken.text.match(/:stated\[/g)).toHaveLength(sure.length);
    const pressed = await hold(text, [], ['a', 'q']);
    expect(pressed.text).toBe(taken.text);
    expect(pressed.out).toContain(`These ${sure.length} are sure`);
    expect((await hold(text, [], ['cancel'])).text).toBe(text);
    expect((await hold(text, [], ['q'])).text).toBe(text);
    const free = await hold(text, ['--take', `sure,${numbers.find((each) => each.sure)?.number}=free`]);
    expect(free.text.match(/:stated\[/g)).toHaveLength(sure.length - 1);
  });

  test('the file changes only there, and check has nothing against it', async () => {
    const before = `\uFEFF${FRONT}${prose}\n`.replaceAll('\n', '\r\n');
    const numbers = await list(before);
    const take = numbers.flatMap(({ number, offers }, index) => {
      const offer = offers.find(({ is }) => is === meant[index]?.[1]);
      return offer ? [`--take=${number}=${offer.offer}`] : [];
    });
    const { code, text, err } = await hold(before, take);
    expect(err).toBe('');
    expect(code).toBe(0);
    const flat = (words: string) => words.replaceAll(/\s+/g, ' ');
    expect(flat(text.replaceAll(/:stated\[([^\]]*)\]\{is=(["']).*?\2\}/g, '$1'))).toBe(flat(before));
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
    expect([...text.matchAll(/:stated\[/g)]).toHaveLength(take.length);
    expect(text).toContain(`waiting`);
    const left = await list(text);
    expect(left.map(({ words }) => words)).toEqual(['91 degrees']);
  });

  test('keys choose, skip, leave free, go back and end; what was chosen is kept', async () => {
    const text = `${FRONT}It is sold at 2 GHz, throttles at 84 °C, has a 5 V supply and settles near 60 degrees. Tea: 91 degrees.\n`;
    const { out, text: written } = await hold(text, [], ['1', 's', 'x', 'b', '1', 'f', 'q']);
    expect(written).toContain(':stated[84 °C]{is="');
    expect(written).toContain(':stated[2 GHz]{is="');
    expect(written.replaceAll('\n', ' ')).toContain(':unheld[5 V] supply and settles near 60 degrees. Tea: 91 degrees.');
    expect(out).toContain('2 held, 1 left free, 2 as they were.');
    expect(out).toContain('  It is sold at »2 GHz«, throttles at 84 °C, has');
  });

  test('an interrupt writes nothing; the end of input keeps what was chosen', async () => {
    const text = `${FRONT}It is sold at 2 GHz and throttles at 84 °C.\n`;
    expect((await hold(text, [], ['1', 'cancel'])).text).toBe(text);
    expect((await hold(text, [], ['1', null])).text).toContain(
      ':stated[2 GHz]{is="rated.device.rated_clock"} and throttles at 84 °C.',
    );
  });

  test('numbers of title and summary are offered and held too, whatever quotes their value is in', async () => {
    const front = FRONT.replace('title: Plain words', 'title: 2 GHz and no more').replace(
      'status: draft',
      "status: draft\nsummary: \"At the fast setting it peaks at about 85 degrees.\"\ndisclosure: 'It''s sold with a 5 V supply.'",
    );
    const numbers = await list(`${front}It throttles at 84 °C.\n`);
    expect(numbers.map(({ line, words }) => `${line} ${words}`)).toEqual(['2 2 GHz', '5 about 85 degrees', '6 5 V', '16 84 °C']);
    expect(numbers[1]?.offers.slice(0, 3).map(({ is }) => is)).toContain('fast.peak_temperature');
    const { code, err, text } = await hold(`${front}It throttles at 84 °C.\n`, [
      '--take=1=rated.device.rated_clock',
      '--take=2=fast.peak_temperature',
      '--take=3=free',
      '--take=4=fast.device.throttle_at',
    ]);
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(text.split('\n').slice(1, 6)).toEqual([
      'title: :stated[2 GHz]{is="rated.device.rated_clock"} and no more',
      'date: 2026-04-01',
      'status: draft',
      `summary: "At the fast setting it peaks at :stated[about 85 degrees]{is='fast.peak_temperature'}."`,
      "disclosure: 'It''s sold with a :unheld[5 V] supply.'",
    ]);
    expect(await list(text)).toEqual([]);
  });

  test('a phrase over two lines of a quotation comes onto one line, and nothing else moves', async () => {
    const text = `${FRONT}> The fast setting peaks at about\n> 85 degrees of\n> heat.\n`;
    const { text: written } = await hold(text, ['--take', '1=fast.peak_temperature']);
    expect(written).toBe(`${FRONT}> The fast setting peaks at :stated[about 85 degrees]{is="fast.peak_temperature"} of\n> heat.\n`);
  });

  test('differences and ratios are offered where the words compare, or where no single figure fits', async () => {
    const [warmer, more, plain, far] = await list(
      `${FRONT}The quick run peaked 13.5 kelvin hotter than the brisk one and drew 45 percent more than the rated one. It settled at 79 degrees; the rest is 2.0 W.\n`,
    );
    expect(warmer?.offers[0]?.is).toBe('quick.peak_temperature - brisk.peak_temperature');
    expect(more?.offers[0]?.is).toBe('quick.load_power / rated.load_power');
    const compared = (offers: readonly { is: string }[] = []) => offers.map(({ is }) => / [-/] /.test(is));
    expect(new Set(compared(plain?.offers))).toEqual(new Set([false]));
    expect(new Set(compared(far?.offers))).toEqual(new Set([true]));
  });

  test('an expression that does not bear the words, a wrong number and a number in a link are refused with the reason', async () => {
    const text = `${FRONT}It is sold at 2 GHz, or [84 °C](https://example.org/), never at 3 GHz.\n`;
    const wrong = await hold(text, ['--take', '1=fast.setting.clock']);
    expect(wrong.err).toMatch(/content\/notes\/plain\.md:14:15: stated "2 GHz", and the data says 2\.6.GHz; write "3 GHz"/);
    expect(wrong).toMatchObject({ code: 1, text });
    expect((await hold(text, ['--take', '9=1'])).err).toBe('there is no number 9: there are 3; nothing is written\n');
    expect((await hold(text, ['--take', '2=1'])).err).toContain('it stands within the words of a link');
    expect((await hold(text, ['--take', '3=1'])).err).toContain('"never" before a number');
    expect((await hold(text, ['--take', 'x'])).err).toContain('write it as 3=1, 3=free or 3=fast.peak_temperature');
    expect((await hold(text, ['--lost'])).err).toContain('unknown option --lost');
  });

  test('where nothing fits, the two nearest of its kind are named as not holding it', async () => {
    const text = `${FRONT}The fast one peaked at 91.5 °C.\n`;
    const [listed] = await list(text);
    expect(listed?.offers).toEqual([]);
    expect(listed?.near).toHaveLength(2);
    for (const { shown } of listed?.near ?? []) expect(shown).toMatch(/°C$/);
    const { out, text: after } = await hold(text, [], ['s']);
    expect(after).toBe(text);
    for (const { is } of listed?.near ?? []) expect(out).toContain(`  not ${is}  `);
  });

  test('a plain temperature is offered no difference, unless words beside it say one', async () => {
    const rise = (await list(`${FRONT}The fast chip sits 45 to 65 degrees above the room.\n`))[0];
    expect(rise?.offers.some(({ shown }) => shown.endsWith('K'))).toBe(true);
    const [plain] = await list(`${FRONT}The fast chip began at 40 to 60 °C.\n`);
    expect(plain?.offers.filter(({ shown }) => shown.endsWith('K'))).toEqual([]);
  });

  test('a value takes the place of the digits, a near miss brings its own words, and the same answer serves what repeats', async () => {
    const text = `${FRONT}The fast chip peaked at 85 degrees and settled at 85 degrees. It is sold at 2.00 GHz; so it is sold at 2.00 GHz.\n`;
    const written = await hold(text, ['--take', '1=v1,2=w1']);
    expect(written.err).toBe('');
    expect(written.text).toContain('peaked at :value[fast.peak_temperature]{to="1 °C"} and settled at');
    const keys = await hold(`${FRONT}It is sold at 2.00 GHz; so it is sold at 2.00 GHz.\n`, [], ['x', '1']);
    expect(keys.out).toContain('1 of 1, line 14: 2 times, one answer for all');
    expect(keys.text.match(/:stated\[2\.00 GHz\]/g)).toHaveLength(2);
    const single = await hold(`${FRONT}It is sold at 2.00 GHz; so it is sold at 2.00 GHz.\n`, [], ['o', '1', 's']);
    expect(single.text.match(/:stated\[2\.00 GHz\]/g)).toHaveLength(1);
    const shown = await hold(`${FRONT}The governor steps in at 84 °C.\n`, [], ['v', '1']);
    expect(shown.text).toContain('steps in at :value[');
  });

  test('what was written is taken back, also where the file was edited since', async () => {
    const text = `${FRONT}It is sold at 2 GHz and throttles at 84 °C.\n`;
    const path = join(project.root, 'content/notes/plain.md');
    const undo = () =>
      holdNote(project.root, ['content/notes/plain.md', '--undo'], {
        out: () => {},
        err: () => {},
        bold: false,
        key: async () => null,
      });
    await hold(text, ['--take', '1=1,2=1']);
    expect(await undo()).toBe(0);
    expect(readFileSync(path, 'utf8')).toBe(text);
    const { text: held } = await hold(text, ['--take', '1=1,2=1']);
    writeFileSync(path, held.replace('It is sold', 'They say it is sold'));
    expect(await undo()).toBe(0);
    expect(readFileSync(path, 'utf8')).toBe(text.replace('It is sold', 'They say it is sold'));
    expect(await undo()).toBe(1);
  });

  test('ranks are offered claims that hold, and are held by them', async () => {
    const text = `${FRONT}The fast setting is the hottest of the four. Brisk has the second highest load power.\n`;
    const numbers = await list(text);
    const hottest = numbers.find(({ words }) => words === 'hottest of the four')!;
    expect(hottest.why).toBeUndefined();
    expect(hottest.offers.map(({ is }) => is)).toContain('fast.peak_temperature is largest of *.peak_temperature');
    const second = numbers.find(({ words }) => words === 'second highest')!;
    expect([second.offers, second.why]).toEqual([[], 'by load_power the order is fast, quick, brisk and rated: brisk is third']);
    const right = `${FRONT}Quick has the second highest load power.\n`;
    const [only] = await list(right);
    expect(only!.offers[0]!.is).toBe('fast.load_power > quick.load_power and all [brisk rated].load_power < quick.load_power');
    const held = await hold(right, ['--take', '1=1']);
    expect([held.code, held.text]).toEqual([
      0,
      right.replace('second highest', `:claim[second highest]{is="${only!.offers[0]!.is}"}`),
    ]);
    expect((await hold(right, ['--take', '1=v1'])).code).toBe(1);
  });

  test('a false rank is offered no claim about another quantity, nor one about more or fewer runs than it says', async () => {
    const sentences = [
      'Quick has the second lowest steady temperature.',
      'Quick has the second best time to steady state.',
      'Rated is the most efficient of the four.',
      'Fast is the hottest of the three.',
      'Fast is the hottest of the five.',
    ];
    const numbers = await list(`${FRONT}${sentences.join('\n\n')}\n`);
    expect(numbers.map(({ words, offers }) => [words, offers.map(({ is }) => is)])).toEqual([
      ['second lowest', []],
      ['second best', []],
      ['most efficient of the four', []],
      ['hottest of the three', []],
      ['hottest of the five', []],
    ]);
    expect([numbers[0], numbers[3]].map((each) => each?.why)).toEqual([
      'by steady_temperature the order is rated, brisk, quick and fast: quick is third',
      'the note has no group of 3 runs that all have the quantity: correct the number, or add a run',
    ]);
    const right = await list(
      `${FRONT}Quick has the third lowest steady temperature. Rated is the coolest of the four. Brisk is the third hungriest of the four.\n`,
    );
    expect(right.map(({ offers, why }) => why ?? offers.map(({ is }) => is))).toEqual([
      ['all [rated brisk].steady_temperature < quick.steady_temperature and fast.steady_temperature > quick.steady_temperature'],
      ['rated.peak_temperature is smallest of *.peak_temperature'],
      ['all [fast quick].load_power > brisk.load_power and rated.load_power < brisk.load_power'],
    ]);
  });

  test('numbers of a table are held by the unit of their column', async () => {
    const table = `${FRONT}| run | load power (W) |\n| --- | ---: |\n| rated | 6.43 |\n| fast | 10.4 |\n`;
    const numbers = await list(table);
    expect(numbers.map(({ words, offers }) => [words, offers[0]?.is])).toEqual([
      ['6.43', 'rated.load_power'],
      ['10.4', 'fast.load_power'],
    ]);
    const { code, err, text } = await hold(table, ['--take', '1=1,2=1']);
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(text).toContain('| rated | :stated[6.43]{unit=W is="rated.load_power"} |');
    expect(await list(text)).toEqual([]);
  });

  test('an error of --take is told at its place in the file as it is', async () => {
    const text = `${FRONT}It is sold at 2 GHz\nand throttles at 84\n°C; it is sold at 2 GHz.\n`;
    const { err, code } = await hold(text, ['--take=1=1,2=1,3=fast.setting.clock']);
    expect(code).toBe(1);
    expect(err).toMatch(/^content\/notes\/plain\.md:16:19: stated "2 GHz"/);
  });

  test('a note that is not there, or that cannot be read, is told', async () => {
    const missing = await holdNote(project.root, ['plian'], { out: () => {}, err: () => {}, bold: false, key: async () => null });
    expect(missing).toBe(1);
    const broken = await hold('---\ntitle: x\n', []);
    expect(broken.code).toBe(1);
    expect(broken.err).toContain('content/notes/plain.md:1:1: error');
  });
});
