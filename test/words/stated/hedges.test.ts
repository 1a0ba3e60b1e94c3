import { describe, expect, test } from 'vitest';
import { HEDGES, hedgeNamed } from '../../../src/words/stated/hedges.ts';
import { isUnread, readStated, type Stated } from '../../../src/words/stated/read.ts';

describe('words/stated/hedges', () => {
  test('has those that authors use', () => {
    const forms = new Set(HEDGES.flatMap(({ before }) => before));
    for (const form of 'about,around,roughly,nearly,almost,just under,just over,under,below,over,above,more than,less than,at least,at most,up to,never above,between,exactly'.split(
      ',',
    )) {
      expect([form, forms.has(form)]).toEqual([form, true]);
    }
  });

  test('no form belongs to two hedges', () => {
    for (const side of ['before', 'after'] as const) {
      const forms = HEDGES.flatMap((hedge) => hedge[side]);
      expect(new Set(forms).size).toBe(forms.length);
    }
  });

  test.each(HEDGES)('$name: its example is read as it says', ({ name, example, meaning }) => {
    const stated = readStated(example) as Stated;
    expect(stated.hedge).toBe(name);
    expect(meaning).toMatch(/^[A-Z].*[.]$/);
  });

  test.each(HEDGES)('$name: every form is read', ({ name, before, after }) => {
    const number = name === 'between' ? '55 and 60 degrees' : '60 degrees';
    const texts = name === 'between' ? before.filter((form) => !form.includes('from')) : before;
    for (const text of [...texts.map((form) => `${form} ${number}`), ...after.map((form) => `60 degrees ${form}`)]) {
      const stated = readStated(text);
      expect([text, isUnread(stated) ? stated.unread : stated.hedge]).toEqual([text, name]);
    }
  });

  test('a hedge never narrows to nothing, and about allows what the bare number allows', () => {
    for (const number of ['58 degrees', '60 degrees', '2.6 GHz', '1 V', 'half an hour', 'twice as fast', 'minus 5 degrees']) {
      const [plain, about] = [readStated(number) as Stated, readStated(`about ${number}`) as Stated];
      expect(about.lower).toBeLessThanOrEqual(plain.lower);
      expect(about.upper).toBeGreaterThanOrEqual(plain.upper);
      const under = readStated(`nearly ${number}`) as Stated;
      expect(under.upper).toBeGreaterThan(under.lower);
    }
  });

  test('refuses a name that is not in the table', () => {
    expect(() => hedgeNamed('constructor')).toThrow('no hedge is named constructor');
  });
});
