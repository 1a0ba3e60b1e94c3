import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fragmentOf, shortDigest } from '../../../src/words/page/fragment.ts';
import { numberIds, type Standing } from '../../../src/words/page/number-ids.ts';
import { write } from '../../../src/words/write.ts';
import { noteOf, TWO } from '../subjects.ts';

const standing = fc.record({
  expression: fc.constantFrom('fast.peak_temperature', 'fast.load_power - rated.load_power', 'rated.score."aes-1t"', 'x', '°'),
  within: fc.string({ maxLength: 12 }),
});
/** Each tells itself from the others, as sentences of a text mostly do. */
const different = fc.uniqueArray(standing, {
  selector: (each) => numberIds([each], new Set())[0]!,
  maxLength: 12,
});

function idOf(of: Standing, among: readonly Standing[]): string {
  return numberIds(among, new Set())[among.indexOf(of)]!;
}

describe('words/page/number-ids', () => {
  it('keeps every id where numbers trade places', () => {
    fc.assert(
      fc.property(
        different.chain((all) => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }))),
        ([all, shuffled]) => {
          for (const each of all) expect(idOf(each, shuffled)).toBe(idOf(each, all));
        },
      ),
    );
  });

  it('keeps every id where others come or go, those of the same expression among them', () => {
    fc.assert(
      fc.property(
        different.chain((all) => fc.tuple(fc.constant(all), fc.subarray(all))),
        ([all, some]) => {
          for (const each of some) expect(idOf(each, some)).toBe(idOf(each, all));
        },
      ),
    );
  });

  it('gives no id twice, none that is taken, and none that an address would have to escape', () => {
    fc.assert(
      fc.property(fc.array(standing, { maxLength: 12 }), (all) => {
        const taken = new Set(numberIds(all.slice(0, 2), new Set()));
        const ids = numberIds(all, taken);
        expect(new Set([...ids, ...taken]).size).toBe(ids.length + taken.size);
        for (const id of ids) expect(new URL(`https://soak.example/#${id}`).hash.slice(1)).toMatch(/^[\w.-]+$/);
        for (const id of ids) expect(new URL(`https://soak.example/#${id}`).hash).toBe(`#${id}`);
      }),
    );
  });

  it('lets capitals, commas and blanks of a sentence be, and no word of it', () => {
    const idIn = (within: string) => numberIds([{ expression: 'x', within }], new Set())[0];
    const alike = ['At last, it reached ■.', 'at last it reached ■', 'At  last it reached ■…'].map(idIn);
    expect(new Set(alike).size).toBe(1);
    expect(idIn('At first it reached ■.')).not.toBe(alike[0]);
  });

  it('tells apart what an address cannot show', () => {
    const within = 'It is ■.';
    const [less, more, ...rest] = numberIds(
      ['a.b < a.c', 'a.b > a.c', 'a.b  <  a.c'].map((expression) => ({ expression, within })),
      new Set(),
    );
    expect(less).toMatch(/^a\.b-a\.c-/);
    expect(more).not.toBe(less);
    // Blanks mean nothing: the same number of the same sentence once more.
    expect(rest).toEqual([`${less}-2`]);
    expect(fragmentOf('rated.score."aes-1t"')).toBe('rated.score.aes-1t');
  });

  // The 32-bit test vectors of FNV-1a that its authors publish (RFC 9923 repeats them), from memory.
  it.each([
    ['', 0x811c9dc5],
    ['a', 0xe40c292c],
    ['foobar', 0xbf9cf968],
  ])('digests “%s” as published, told in base 36', (text, hash) => {
    expect(shortDigest(text)).toBe(hash.toString(36).slice(-5));
  });

  it('stays in a note whose paragraphs trade places, whose data changes, and whose commas do', () => {
    const paragraphs = [
      'It reached :value[fast.peak_temperature], and :value[rated.peak_temperature] when rated.',
      'Nobody saw more than :value[fast.peak_temperature].',
      '::table{runs="fast rated" of="peak_temperature"}',
    ];
    const idsOf = (...text: string[]) =>
      new Map(write(noteOf(text.join('\n\n')), TWO).entries.map(({ id, kind, expression }) => [id, `${kind} ${expression}`]));
    const then = idsOf(...paragraphs);
    expect(then.size).toBe(5);
    const now = idsOf(...paragraphs.toReversed(), 'And :value[fast.peak_temperature] once more.');
    for (const [id, number] of then) expect(now.get(id)).toBe(number);
    expect([...idsOf(paragraphs[0]!.replace(', and', ' and')).keys()]).toEqual([...then.keys()].slice(0, 2));
  });

  it('an expression of sixty letters is in the id whole, of a longer one its first sixty', () => {
    const idOf = (length: number) => numberIds([{ expression: 'a'.repeat(length), within: '' }], new Set())[0]!;
    expect(idOf(60)).toMatch(/^a{60}-/);
    expect(idOf(61)).toMatch(/^a{60}-/);
    expect(idOf(59)).toMatch(/^a{59}-/);
  });
});
