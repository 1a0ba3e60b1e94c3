import { describe, expect, test } from 'vitest';
import { gatherChosen } from '../../../src/browser/compare/chosen.ts';
import { figuresJson } from '../../../src/figures/figures-json.ts';
import { browserRun, demo } from './published.ts';

type Published = { readonly sources: Record<string, { title: string }>; readonly figures: Record<string, object> };

/** With the aliases of a comparison in place of ids, and its own id in the sources that only it has. */
function renamed({ sources, figures }: Published, comparison: string, aliases: ReadonlyMap<string, string>): Published {
  let text = JSON.stringify({ sources, figures }).replaceAll('comparison:chosen-runs/', `comparison:${comparison}/`);
  text = text.replaceAll(/ in chosen-runs"/g, ` in ${comparison}"`);
  for (const [alias, id] of aliases) {
    text = text.replaceAll(new RegExp(`(?<!/)\\b${id}\\b(?!/)`, 'g'), alias);
  }
  return JSON.parse(text);
}

describe('figures of runs that a reader chose', () => {
  test.each([...demo.comparisons.keys()])('are those of the comparison %s with the same runs, to the last bit', (id) => {
    const { comparison, figures } = demo.comparisons.get(id)!;
    const runs = [...comparison.runs.values()].map(browserRun);
    const chosen = gatherChosen(runs, comparison.runs.get(comparison.reference)!);
    const stage1 = JSON.parse(JSON.stringify(figuresJson({}, figures!))) as Published;
    const browser = renamed(chosen as unknown as Published, id, comparison.runs);
    const tree = (published: Published) => ({ figures: published.figures, sources: published.sources });
    expect(Object.keys(browser.figures).length).toBeGreaterThan(20);
    expect(tree(browser)).toEqual(tree({ ...stage1, sources: renamedTitles(stage1.sources, comparison.runs) }));
  });

  test('of one run are none of a comparison; a reference that is not among them is refused', () => {
    const rated = browserRun('larch-rated');
    expect(gatherChosen([rated], 'larch-rated')).toMatchObject({ reference: 'larch-rated', runs: [{ run: 'larch-rated' }] });
    expect(() => gatherChosen([rated], 'larch-fast')).toThrow('the reference larch-fast is none of the runs');
  });
});

/** Titles of sources name runs by their ids everywhere; the renaming above does not know that. */
function renamedTitles(sources: Published['sources'], aliases: ReadonlyMap<string, string>): Published['sources'] {
  let text = JSON.stringify(sources);
  for (const [alias, id] of aliases) text = text.replaceAll(new RegExp(`(?<!/)\\b${id}\\b(?!/)`, 'g'), alias);
  return JSON.parse(text);
}
