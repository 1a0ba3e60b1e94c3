/** Texts of charts in a real browser: in the page's own font and with every web font refused, none leaves its drawing and none covers another. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { drawIn } from '../../src/plots/drawing/draw-in.ts';
import { isPlan } from '../../src/plots/drawing/plan.ts';
import { NARROW, WIDE } from '../../src/plots/drawing/size.ts';
import { plan } from '../../src/plots/specify.ts';
import { generator, request, type Shape, subject } from '../plots/subjects.ts';
import { demonstrationSite } from './built-site.ts';

const CASES = 50;
const KINDS = ['trace', 'trace', 'step-response', 'power-by-phase'] as const;
const NAMES = [
  'rated',
  'w',
  'Wide-open throttle, fans off',
  'mmmmmmmmmmmm',
  'iiii',
  'second specimen',
  'η-mode µ',
  'WWWWWWWWWW',
  'undervolted by 40 mV',
  'Ω',
];

/** Charts that crowd: up to six runs that end together, long and wide names, limits at the edge, short and long loads. */
async function crowded(): Promise<string[]> {
  const next = generator();
  const drawn: string[] = [];
  for (let i = 0; i < CASES; i += 1) {
    const kind = KINDS[i % KINDS.length]!;
    const count = kind === 'trace' ? 1 + Math.floor(next() * 6) : 2 + Math.floor(next() * 3);
    const from = Math.floor(next() * NAMES.length);
    const subjects = Array.from({ length: count }, (_, k) => {
      const shape: Shape = {
        rise: 30 + next() * 28,
        load: 1200 + Math.round(next() * 3) * 1200,
        step: 20,
        limit: 70 + Math.round(next() * 14),
      };
      return subject(NAMES[(from + k) % NAMES.length]!, shape);
    });
    const channels = kind === 'trace' ? [['soc'], ['soc', 'core_clock', 'board'], ['soc', 'flag']][i % 3]! : [];
    const asked = request(kind, subjects, channels, { rise: kind === 'trace' && i % 5 === 0 });
    const planned = plan(asked, subjects);
    if (!isPlan(planned)) throw new Error(planned.map(({ found }) => found).join('; '));
    for (const size of [WIDE, NARROW]) drawn.push((await drawIn(size, planned, `crowded-${i}`)).svg);
  }
  return drawn;
}

/** Every drawing in the pages below a folder. */
function drawingsIn(folder: string): string[] {
  const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html'));
  return pages.flatMap((page) => readFileSync(join(folder, page), 'utf8').match(/<svg role="img"[\s\S]*?<\/svg>/g) ?? []);
}

interface Measured {
  readonly texts: number;
  readonly outside: readonly string[];
  readonly covering: readonly string[];
  readonly face: boolean;
}

/** What the browser says of all texts: where each stands beyond its drawing, and which two stand over each other by more than a hair. */
const measure = (): Measured => {
  const [outside, covering]: string[][] = [[], []];
  let texts = 0;
  const HAIR = 1;
  const EDGE = 3;
  for (const svg of document.querySelectorAll('svg')) {
    const frame = svg.getBoundingClientRect();
    const boxes = [...svg.querySelectorAll('text')]
      .filter((text) => text.textContent!.trim() !== '')
      .map((text) => {
        const { left, right, top, bottom } = text.getBoundingClientRect();
        // A line of text is higher than its letters.
        const inset = (bottom - top) * 0.22;
        return { text: text.textContent!, left, right, top: top + inset, bottom: bottom - inset };
      });
    texts += boxes.length;
    // The edge of paper around a text is part of its box.
    for (const box of boxes) {
      const beyond = Math.max(frame.left - box.left, box.right - frame.right, frame.top - box.top, box.bottom - frame.bottom);
      if (beyond > HAIR + EDGE / 2) outside!.push(`${box.text} (${beyond.toFixed(1)} px)`);
    }
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        if (across > HAIR && down > HAIR)
          covering!.push(`${svg.getAttribute('aria-label')}, ${frame.width} px: ${a.text} / ${b.text}`);
      }
    });
  }
  return { texts, outside: outside!, covering: covering!, face: document.fonts.check('14px "Source Sans 3"') };
};

describe('texts of charts', () => {
  const site = demonstrationSite();

  test('stay in their drawing and apart, in the page’s font and without it', async () => {
    const shown = drawingsIn(join(site.root, 'dist'));
    const made = await crowded();
    expect(shown.length).toBeGreaterThan(20);
    for (const blocked of [false, true]) {
      const context = await site.browser.newContext({ viewport: { width: 1000, height: 800 }, bypassCSP: true });
      const page = await context.newPage();
      if (blocked) await page.route(/\.woff2/, (route) => route.abort());
      await page.goto(site.served.address, { waitUntil: 'networkidle' });
      await page.reload({ waitUntil: 'networkidle' });
      const figures = [...shown, ...made].map((svg) => `<figure class="plot">${svg}</figure>`).join('');
      await page.evaluate((html) => {
        document.body.innerHTML = html;
      }, figures);
      const { texts, outside, covering } = await page.evaluate(measure);
      expect(texts).toBeGreaterThan(1000);
      expect({ blocked, outside, covering }).toEqual({ blocked, outside: [], covering: [] });
      await context.close();
    }
  });
});

describe('formulas', () => {
  const site = demonstrationSite();

  test('keep their subscripts below the line where the machine has no font for them', async () => {
    const page = await (await site.browser.newContext({ bypassCSP: true })).newPage();
    await page.route(/\.woff2/, (route) => route.abort());
    await page.goto(`${site.served.address}method/`, { waitUntil: 'networkidle' });
    await page.addStyleTag({ content: 'math { font-family: "DejaVu Sans", Arial, sans-serif !important }' });
    const drops = await page.evaluate(() =>
      [...document.querySelectorAll('msub')].map((formula) => {
        const [base, below] = [...formula.children].map((child) => child.getBoundingClientRect());
        return (below!.bottom - base!.bottom) / Number.parseFloat(getComputedStyle(formula).fontSize);
      }),
    );
    expect(drops.length).toBeGreaterThan(20);
    expect(Math.min(...drops)).toBeGreaterThan(0.02);
  });
});
