import { describe, expect, test } from 'vitest';
import { readRun } from '../../../src/browser/compare/read-run.ts';
import { gatherRun } from '../../../src/compute/comparison/gather.ts';
import { isUnreadable } from '../../../src/figures/read-figures-json.ts';
import { browserRun, demo, filesOf, gatherable } from './published.ts';

describe('a published run, read in the browser', () => {
  test.each([...demo.runs.outcomes.keys()])('%s is to the last bit what stage 1 gathers', (id) => {
    const gathered = gatherRun(demo.register, id, gatherable(id));
    const read = browserRun(id);
    expect(read.gathered).toEqual(JSON.parse(JSON.stringify(gathered)));
    expect(read.clockSetting).toBe(gatherable(id).run.context.setting.clock?.value);
  });

  test('a file that is not as it should be is named with what is wrong', () => {
    const [figures, series] = filesOf('larch-rated');
    const told = (a: string, b: string) => {
      const read = readRun(a, b);
      return isUnreadable(read) ? read.unreadable : '';
    };
    expect(told(figures, series)).toBe('');
    expect(told('{', series)).toBe('in its figures.json it is not JSON');
    expect(told(figures, '<!doctype html>')).toBe('in its series.json it is not JSON');
    expect(told(figures, figures)).toBe('in its series.json load holds nothing, and something was expected');
    expect(told(figures.replace('"about"', '"abuot"'), series)).toBe(
      'in its figures.json about holds nothing, and something was expected',
    );
    expect(told(figures, series.replace(/"y":\[[^,]*,/, '"y":['))).toMatch(
      /^in its series\.json channels\[0\]\.(rise|means|y).* was expected$/,
    );
  });
});
