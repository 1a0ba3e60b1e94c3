import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../src/plots/drawing/plan.ts';
import { outlined } from '../../../src/plots/drawing/png.ts';
import { textWidth } from '../../../src/plots/drawing/text-width.ts';
import { planScaling } from '../../../src/plots/scaling/plan.ts';
import { plan } from '../../../src/plots/specify.ts';
import { captionStrip } from '../../../src/plots/stills/caption-strip.ts';
import { compose, type Picture } from '../../../src/plots/stills/compose.ts';
import { drawStills } from '../../../src/plots/stills/draw-stills.ts';
import {
  balanced,
  LEAST_ON_PHONE,
  PHONE_WIDTH,
  roomBelow,
  SHARE,
  STILL,
  titleLines,
  WIDTH,
} from '../../../src/plots/stills/format.ts';
import { LOOKS } from '../../../src/plots/stills/looks.ts';
import { numberCard } from '../../../src/plots/stills/number-card.ts';
import { tableDrawings } from '../../../src/plots/stills/table-body.ts';
import { contrast } from '../../contrast.ts';
import { steps } from '../comparisons.ts';
import { request, subject } from '../subjects.ts';
import { differing, pixelsOf } from './pixels.ts';

const FOOT = { of: 'Larch 2 (invented), 2026-03-22', address: 'bench.example/notes/a-clock-it-cannot-keep/' };
const runs = [subject('rated', { rise: 40 }), subject('quick', { rise: 46 }), subject('fast', { rise: 55, load: 2100 })];
const scaled = steps({ rated: [1, 1], quick: [1.2, 1.15], fast: [1.3, 1.2] });
const WORDS = { shown: '78.5 °C', uncertainty: 'repeatability only: ± 0.99 K (95 %)', of: 'Quick setting, hour soak' };
const TABLE = {
  caption: 'What each step costs',
  head: ['', 'rated', 'brisk', 'quick', 'fast', 'faster', 'fastest'],
  rows: Array.from({ length: 14 }, (_, i) => [
    `figure number ${i} of this table`,
    ...[1, 2, 3, 4, 5, 6].map((n) => `${n}.${i} °C`),
  ]),
};

async function all(): Promise<Picture[]> {
  const planned = [
    plan(request('trace', runs, ['soc', 'core_clock', 'flag']), runs),
    plan(request('step-response', runs), runs),
    plan(request('power-by-phase', runs), runs),
    planScaling(scaled),
  ] as Plan[];
  const drawn = (await Promise.all(planned.map(drawStills))).flatMap(({ stills }) => stills);
  const tables = tableDrawings(TABLE, roomBelow(TABLE.caption));
  return [
    ...[...drawn, ...tables].map(({ title, svg }) => ({ title, body: svg, foot: FOOT })),
    { title: 'Steady temperature of quick', body: numberCard(WORDS), foot: FOOT },
    { title: '', body: captionStrip('hot enough to burn', roomBelow('')), foot: FOOT },
  ];
}

const pictures = await all();
const TEXT = /<text\b([^>]*)>([\s\S]*?)<\/text>/g;

describe('plots/stills/compose', () => {
  test('no type is below 9 px where a phone shows the picture 360 px wide', () => {
    for (const picture of pictures) {
      const svg = compose(picture, STILL, LOOKS[0]!);
      const scale = Number(/ scale\(([\d.]+)\)/.exec(svg)?.[1] ?? 1);
      const sizes = [...svg.matchAll(/font-size="([\d.]+)px"/g)].map(([, px]) => Number(px));
      const smallest = (Math.min(...sizes) * scale * PHONE_WIDTH) / WIDTH;
      expect(sizes.length, picture.title).toBeGreaterThan(2);
      expect(smallest, picture.title).toBeGreaterThanOrEqual(LEAST_ON_PHONE - 0.05);
    }
  });

  test.each(LOOKS)('$name: letters stand out from what is around them by 4.5 : 1 (WCAG 2.2, 1.4.3)', (look) => {
    for (const picture of pictures) {
      const svg = compose(picture, STILL, look);
      const texts = [...svg.matchAll(TEXT)];
      expect(texts.length).toBeGreaterThan(0);
      for (const [, attributes, words] of texts) {
        const fill = /\bfill="(#[0-9a-f]{6})"/.exec(attributes!)![1]!;
        // On paper that is the paper; without it, the edge that each letter has.
        const around = /\bstroke="(#[0-9a-f]{6})"/.exec(attributes!)![1]!;
        expect(around).toBe(look.palette.paper);
        expect(contrast(fill, around), `${picture.title}: ${words}`).toBeGreaterThanOrEqual(4.5);
      }
    }
  });

  test('nothing stands in the outer 5 %', () => {
    for (const picture of pictures) {
      const { width, height, rgba } = pixelsOf(compose(picture, STILL, LOOKS[2]!), WIDTH);
      const outside = (i: number) => {
        const [x, y] = [i % width, Math.floor(i / width)];
        // Edges of letters may reach a pixel beyond.
        return x < STILL.x - 2 || x >= width - STILL.x + 2 || y < STILL.y - 2 || y >= height - STILL.y + 2;
      };
      const drawn = Array.from({ length: width * height }, (_, i) => i).filter((i) => outside(i) && rgba[4 * i + 3]! > 0);
      expect(drawn.length, picture.title).toBe(0);
    }
  });

  test('without paper nothing is behind the drawing', () => {
    const { rgba } = pixelsOf(compose(pictures[0]!, STILL, LOOKS[2]!), WIDTH);
    expect(rgba[3]).toBe(0);
    expect(pixelsOf(compose(pictures[0]!, STILL, LOOKS[1]!), WIDTH).rgba[3]).toBe(255);
  });

  test('an SVG of outlines looks the same where there are no fonts', () => {
    for (const picture of pictures.slice(0, 2)) {
      const svg = compose(picture, STILL, LOOKS[0]!);
      const outlines = outlined(svg, 1920);
      expect(outlines).toMatch(/^<svg width="1920" height="1080" viewBox="0 0 640 360"/);
      expect(outlines).not.toMatch(/<text|font-family/);
      const [own, alone] = [pixelsOf(svg, WIDTH), pixelsOf(outlines, WIDTH, false)];
      expect(differing(own, pixelsOf(svg, WIDTH, false))).toBeGreaterThan(2000);
      expect(differing(own, alone)).toBeLessThan(0.001 * own.width * own.height);
    }
  });

  test('drawings of stills fit a picture for feeds too', () => {
    for (const picture of pictures) expect(compose(picture, SHARE, LOOKS[0]!), picture.title).not.toMatch(/ scale\(0\.[0-8]/);
  });

  test('device and address share the foot, or have a line each where they are long', () => {
    const long = { of: FOOT.of, address: `${'bench.example/'.repeat(4)}notes/x/` };
    const lines = (foot: Picture['foot']) =>
      new Set(
        [...compose({ ...pictures[0]!, foot }, STILL, LOOKS[0]!).matchAll(TEXT)]
          .slice(-2)
          .map(([, look]) => / y="([\d.]+)"/.exec(look!)![1]),
      );
    expect(lines(FOOT).size).toBe(1);
    expect(lines(long).size).toBe(2);
  });
});

describe('plots/stills/format', () => {
  test('a title is broken into lines of about one length, a number never from its unit', () => {
    const lines = titleLines('Rated settles at 59.5\u00a0°C, quick at 78.5\u00a0°C and fast throttles after 19.7\u00a0min');
    expect(lines).toHaveLength(2);
    expect(lines.join(' ')).toContain('78.5\u00a0°C');
    const [a, b] = lines.map((line) => textWidth(line, 21, 'semibold')) as [number, number];
    expect(Math.min(a, b) / Math.max(a, b)).toBeGreaterThan(0.8);
  });

  test('a title never has more than three lines, and one word of any length stays inside', () => {
    expect(titleLines('word '.repeat(80))).toHaveLength(3);
    expect(titleLines('word '.repeat(80)).at(-1)).toMatch(/…$/);
    expect(textWidth(titleLines('w'.repeat(200))[0]!, 21)).toBeLessThanOrEqual(576);
    expect(balanced('one', 21, 100)).toEqual(['one']);
  });
});

describe('plots/stills/number-card', () => {
  test('the number is large and inside, its unit smaller', () => {
    for (const shown of ['78.5 °C', '1.18', '−0.873 W', '1,234,567.8 kg·m/s', '95 %']) {
      const texts = [...numberCard({ ...WORDS, shown }).matchAll(/<text x="([\d.]+)"[^>]*font-size="([\d.]+)px"[^>]*>([^<]*)</g)];
      const [number, unit] = texts;
      expect(`${number![3]}${shown.includes(' ') ? ` ${unit![3]}` : ''}`, shown).toBe(shown);
      expect(Number(number![2])).toBeGreaterThan(40);
      const last = shown.includes(' ') ? unit! : number!;
      expect(Number(last[1]) + textWidth(last[3]!, Number(last[2]), 'normal')).toBeLessThanOrEqual(577);
    }
  });
});

describe('plots/stills/table-body', () => {
  test('a table that is too large for one picture is told in several, each with its heads, no cell lost', () => {
    const drawn = tableDrawings(TABLE, roomBelow(TABLE.caption));
    expect(drawn.length).toBeGreaterThan(1);
    const texts = drawn.map(({ svg }) => [...svg.matchAll(/>([^<]+)<\/text>/g)].map(([, words]) => words!));
    const cells = texts.flat().filter((words) => words.endsWith('°C'));
    expect(cells.sort()).toEqual(TABLE.rows.flatMap((row) => row.slice(1)).sort());
    for (const words of texts) expect(words.some((word) => TABLE.head.includes(word))).toBe(true);
  });

  test('a small one is set larger', () => {
    const [small] = tableDrawings({ ...TABLE, head: ['', 'rated'], rows: [['load power', '6.4 W']] }, 200);
    expect(small!.svg).toContain('font-size="26px"');
  });
});
