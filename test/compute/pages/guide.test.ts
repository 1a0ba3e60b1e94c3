/** The user's guide as pages of the site: all of it, in the order of its first page, with links that lead from page to page. */
import { describe, expect, it } from 'vitest';
import { guideModels } from '../../../src/compute/pages/guide.ts';
import { guideTexts } from '../../../src/compute/project/guide-texts.ts';
import { renderProse } from '../../../src/words/prose.ts';

const texts = guideTexts();
const pages = new Map(guideModels(texts));

describe('pages/guide', () => {
  it('prints every page of the guide, the list first, and leads from each to the next', () => {
    expect([...pages.keys()].slice(0, 2)).toEqual(['guide/', 'guide/first-write-up/']);
    expect(
      [...pages.keys()].map((path) => (path === 'guide/' ? 'README.md' : `${path.slice('guide/'.length, -1)}.md`)).sort(),
    ).toEqual([...texts.keys()].sort());
    expect([...pages.values()].map(({ next }) => next?.path)).toEqual([...[...pages.keys()].slice(1), undefined]);
  });

  it('has nothing that prose may not have', () => {
    const problems = [...texts].flatMap(([name, text]) => renderProse(text, { file: name, line: 1 }).problems);
    expect(problems).toEqual([]);
  });

  it('links to pages and parts that are there', () => {
    const lost = [...pages].flatMap(([path, { html }]) =>
      [...html.matchAll(/ href="([^"]+)"/g)].flatMap(([, href = '']) => {
        const to = new URL(href, `https://bench.example/${path}`);
        const page = pages.get(to.pathname.slice(1));
        const found = page !== undefined && (to.hash === '' || page.html.includes(` id="${to.hash.slice(1)}"`));
        return found ? [] : [`${path}: ${href}`];
      }),
    );
    expect(lost).toEqual([]);
  });

  it('lists the parts of a page that has many', () => {
    expect(pages.get('guide/first-write-up/')!.sections.map(({ id }) => id)).toContain('3-the-runs');
    expect(pages.get('guide/safety/')!.sections).toEqual([]);
  });
});
