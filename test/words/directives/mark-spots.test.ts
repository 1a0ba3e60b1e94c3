import { describe, expect, it } from 'vitest';
import { write } from '../../../src/words/write.ts';
import type { Subject } from '../../../src/words/written.ts';
import { noteOf, reportOf, SPOTTED } from '../subjects.ts';

const written = (text: string, subjects: ReadonlyMap<string, Subject> = SPOTTED) => write(noteOf(text), subjects, { unheld: true });

describe('words/directives/mark-spots', () => {
  it('numbers the spots of a photograph and prints their corrected temperatures below it, each held by its figure', () => {
    const { pictures, pieces, entries, problems } = written('![The lid](lid.jpg "From above")\n');
    expect(reportOf(problems)).toBe('');
    expect(pictures).toMatchObject([{ path: 'lid.jpg', marks: [{ x: 0.46, y: 0.44 }] }]);
    expect(entries.map(({ kind, expression, shown }) => ({ kind, expression, shown: shown.replace(/\s/, ' ') }))).toEqual([
      { kind: 'table', expression: 'rated.surface.lid-centre', shown: '46.3 °C' },
      { kind: 'table', expression: 'fast.surface.lid-centre', shown: '59.8 °C' },
    ]);
    const html = String(pieces[0]);
    expect(html).toContain('<span class="mark">1</span> lid centre');
    expect(html.indexOf('picture 0')).toBeLessThan(html.indexOf('<table'));
    expect(html.indexOf('</table>')).toBeLessThan(html.indexOf('<figcaption>'));
  });

  it('takes the runs of the note that declare the photograph, and leaves other pictures alone', () => {
    const { entries } = written('![The lid](lid.jpg)\n', new Map([...SPOTTED].slice(1)));
    expect(entries.map(({ expression }) => expression)).toEqual(['fast.surface.lid-centre']);
    const other = written('![The stand](stand.jpg)\n');
    expect(other.pictures![0]).not.toHaveProperty('marks');
    expect(String(other.pieces[0])).not.toContain('<table');
  });

  it('tells the tables of two photographs apart, by label and by id', () => {
    const { pieces, problems } = written('![The lid](lid.jpg)\n\n![The lid again](lid.jpg)\n');
    expect(reportOf(problems)).toBe('');
    const all = (pattern: RegExp, html = String(pieces[0])) => [...html.matchAll(pattern)].map(([, found]) => found!);
    expect(all(/aria-label="(Temperatures[^"]*)"/g)).toEqual([
      'Temperatures of the marked spots',
      'Temperatures of the marked spots (2)',
    ]);
    const [own] = all(/id="(picture-[^"]*-spots)"/g);
    const beside = written(`![The lid](lid.jpg)\n\n::table{runs="fast" of='surface."lid-centre"' id="${own}"}\n`);
    expect(reportOf(beside.problems)).toBe('');
    const ids = all(/ id="([^"]*)"/g, String(beside.pieces[0]));
    expect(ids).toContain(own);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('says which spot the surface readings do not have', () => {
    const fast = SPOTTED.get('fast')!;
    const photographs = new Map([['lid.jpg', [{ spot: 'base', at: { x: 0.1, y: 0.1 } }]]]);
    const { problems, pictures } = written('![The lid](lid.jpg)\n', new Map([['fast', { ...fast, photographs }]]));
    expect(problems.map(({ severity, place }) => [severity, place.line])).toEqual([['error', 1]]);
    expect(problems[0]!.found).toContain('base');
    expect(pictures![0]).not.toHaveProperty('marks');
  });
});
