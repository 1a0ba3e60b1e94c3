import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { accentFault, contrast, UNDER_LINKS } from '../../../src/compute/project/accent.ts';
import { optionFaults, settingsOf } from '../../../src/compute/project/site-options.ts';

const faults = (options: Record<string, unknown>) =>
  optionFaults({ title: 'T', ...options }).map(({ rule, found, remedy }) => [
    rule,
    found,
    ...(remedy === undefined ? [] : [remedy]),
  ]);

describe('compute/site-options', () => {
  it('takes every option in its form', () => {
    const navigation = ['notes', 'about', { label: 'Parts', to: 'https://parts.example' }, { label: 'Newest', to: 'notes/a/' }];
    const options = {
      ...{ byline: 'B', site: 'https://bench.example', base: '/reports/', contact: 'me@bench.example' },
      ...{ licence: { words: 'CC-BY-4.0', data: 'CC0-1.0' }, funding: 'myself', about: 'about.md', navigation },
      ...{ accent: { light: '#14506e', dark: '#93C7E6' }, harmless: ['192.168.1.20'], guide: true },
    };
    expect(faults(options)).toEqual([]);
    expect(settingsOf({ title: 'T', ...options })).toMatchObject({
      reach: 'mailto:me@bench.example',
      licence: { words: { id: 'CC-BY-4.0' }, data: { title: 'Creative Commons Zero v1.0 Universal' } },
      navigation,
    });
  });

  it('leads to every section, and to the page about the publication where there is one', () => {
    expect(settingsOf({ title: 'T' }).navigation).toEqual(['notes', 'devices', 'runs', 'compare', 'method', 'search']);
    expect(settingsOf({ title: 'T', about: 'about.md' }).navigation.at(-1)).toBe('about');
  });

  it.each([
    [{ title: '' }, ['bad-option', '`title` is ""']],
    [{ byline: 3 }, ['bad-option', '`byline` is 3']],
    [{ site: 'bench.example' }, ['bad-option', '`site` is "bench.example"']],
    [{ site: 'https://bench.example/reports/' }, ['bad-option', '`site` is "https://bench.example/reports/"']],
    [{ base: 'reports' }, ['bad-option', '`base` is "reports"']],
    [{ base: '//bench.example/' }, ['bad-option', '`base` is "//bench.example/"']],
    [{ base: '/../x' }, ['bad-option', '`base` is "/../x"']],
    [{ base: '/a?b' }, ['bad-option', '`base` is "/a?b"']],
    [{ contact: 'me at bench' }, ['bad-option', '`contact` is "me at bench"']],
    [{ contact: 'http://bench.example' }, ['bad-option', '`contact` is "http://bench.example"']],
    [{ licence: 'CC0-1.0' }, ['bad-option', '`licence` is "CC0-1.0"']],
    [{ licence: { word: 'CC0-1.0' } }, ['unknown-option', '`licence` has no option `word`', 'did you mean `words`?']],
    [{ licence: { words: 'CC-BY' } }, ['unknown-licence', '`licence.words` is "CC-BY"']],
    [{ funding: ' ' }, ['bad-option', '`funding` is " "']],
    [{ about: '../about.md' }, ['bad-option', '`about` is "../about.md"']],
    [{ navigation: 'notes' }, ['bad-option', '`navigation` is "notes"']],
    [{ navigation: ['nots'] }, ['bad-option', '`navigation` is "nots"', 'did you mean `notes`?']],
    [{ navigation: ['about'] }, ['bad-option', '`navigation` names `about`, and there is no option `about`']],
    [
      { navigation: [{ label: 'Parts', to: 'javascript:1' }] },
      ['bad-option', '`navigation` is {"label":"Parts","to":"javascript:1"}'],
    ],
    [{ accent: { light: 'blue' } }, ['bad-option', '`accent.light` is "blue"']],
    [{ accent: { lihgt: '#14506e' } }, ['unknown-option', '`accent` has no option `lihgt`', 'did you mean `light`?']],
    [
      { accent: { light: '#7fa8d0' } },
      ['accent-contrast', '`#7fa8d0` stands out from the light window (#efe9d8) as 2.05 to 1', 'take a darker colour'],
    ],
    [{ harmless: [''] }, ['bad-option', '`harmless` is [""]']],
    [{ guide: 'yes' }, ['bad-option', '`guide` is "yes"']],
    [{ colour: 'red' }, ['unknown-option', 'a publication has no option `colour`', 'remove it']],
  ])('tells what is wrong with %j', (options, fault) => {
    expect(faults(options)).toEqual([fault]);
  });

  it('misses a title', () => {
    expect(optionFaults({}).map(({ found }) => found)).toEqual(['the publication has no `title`']);
  });
});

describe('compute/accent', () => {
  // WCAG 2.2: black on white is 21 to 1; #767676 is the palest grey that passes 4.5 to 1 on white (WebAIM's worked example, from memory).
  it('measures contrast as WCAG defines it', () => {
    expect(contrast('#000000', '#ffffff')).toBe(21);
    expect(contrast('#767676', '#ffffff')).toBeGreaterThan(4.5);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  });

  it('knows what the palette puts under links', () => {
    const css = readFileSync(new URL('../../../src/styles/palette.css', import.meta.url), 'utf8');
    const [light = '', dark = ''] = css.split('@media screen and (prefers-color-scheme: dark)');
    for (const [sheet, under] of [
      [light, UNDER_LINKS.light],
      [dark, UNDER_LINKS.dark],
    ] as const)
      for (const [name, colour] of Object.entries(under)) expect(sheet).toContain(`--${name}: ${colour};`);
  });

  it('refuses what cannot be read on one of them, with the figure', () => {
    expect(accentFault('light', '#1d4f7c')).toBeUndefined();
    expect(accentFault('dark', '#9cc4ea')).toBeUndefined();
    expect(accentFault('light', '#7fa8d0')).toEqual({
      found: '`#7fa8d0` stands out from the light window (#efe9d8) as 2.05 to 1',
      expected: 'at least 4.5 to 1, so that links can be read (WCAG 2.2, 1.4.3)',
      remedy: 'take a darker colour',
    });
    expect(accentFault('dark', '#1d4f7c')?.remedy).toBe('take a lighter colour');
  });
});
