/** The reference of the guide is what the code says, to the last letter; `npx vitest run --project unit test/guide -u` writes it anew. */
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { TABLE_FORMS } from '../../src/figures/table-layout.ts';
import { lineOf } from '../../src/register/values/key-line.ts';
import { DIRECTIVES } from '../../src/words/page/directive-names.ts';
import {
  commandsPage,
  directivesPage,
  figuresPage,
  keysPage,
  optionsPage,
  shapesOf,
  slug,
  tablesPage,
  wordsPage,
} from './reference.ts';

const GUIDE = join(import.meta.dirname, '../../src/guide');
const PAGES = {
  'reference-keys.md': keysPage,
  'reference-tables.md': tablesPage,
  'reference-directives.md': directivesPage,
  'reference-words.md': wordsPage,
  'reference-figures.md': figuresPage,
  'reference-options.md': optionsPage,
  'reference-commands.md': commandsPage,
};

describe('the reference', () => {
  it.each(Object.entries(PAGES))('%s is made from the code', async (name, made) => {
    await expect(made()).toMatchFileSnapshot(join(GUIDE, name));
  });

  it('says of every key, column and attribute what it tells, in a clause', () => {
    const abouts = [
      ...[...shapesOf().values()].flatMap(({ facts }) => facts.map(({ about }) => about)),
      ...Object.values(TABLE_FORMS).flatMap(({ columns }) => Object.values(columns).map(({ about }) => about)),
      ...[...DIRECTIVES.values()].flatMap(({ says, about }) => [about, ...Object.values(says)]),
    ];
    expect(abouts.length).toBeGreaterThan(150);
    expect(abouts.filter((about) => about.trim().length < 8 || /[.:]$/.test(about))).toEqual([]);
  });

  it('shows an example of every key that takes a text', () => {
    const bare = [...shapesOf()].flatMap(([title, { facts }]) =>
      facts.filter((fact) => fact.kinds.includes('text') && lineOf(fact) === undefined).map(({ key }) => `${title}: ${key}`),
    );
    expect(bare).toEqual([]);
  });

  it('gives each shape a title of its own, and an address', () => {
    const slugs = [...shapesOf().keys()].map(slug);
    expect(new Set(slugs).size).toBe(slugs.length);
  });
});
