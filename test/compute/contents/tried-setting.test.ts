import { describe, expect, it } from 'vitest';
import type { SiteContents } from '../../../src/compute/contents/site-contents.ts';
import { failedAtSetting, triedAtSetting } from '../../../src/compute/contents/tried-setting.ts';
import { exact } from '../../../src/quantities/uncertainty.ts';
import type { Run } from '../../../src/register/register.ts';

const LADDER = [
  { clock: 2.2e9, offset: 0, outcome: 'passed' },
  { clock: 2.4e9, offset: 0, outcome: 'restarted' },
  { clock: 2.4e9, offset: 0.06, outcome: 'passed' },
];
const tried = (specimen: string) =>
  ({
    attempts: new Map([['ladder', { attempts: { device: 'alder', specimen }, ladder: { attempts: LADDER } }]]),
  }) as unknown as Pick<SiteContents, 'attempts'>;
const run = (setting: Run['context']['setting']) => ({ device: 'alder', specimen: 'no-1', context: { setting } }) as unknown as Run;

describe('compute/contents/tried-setting', () => {
  it('takes what came of the setting of a run from the attempts at it, without an offset from those without', () => {
    expect(triedAtSetting(tried('no-1'), run({ clock: exact(2.4e9, 'Hz') }))).toEqual(['restarted']);
    expect(triedAtSetting(tried('no-1'), run({ clock: exact(2.4e9, 'Hz'), voltageOffset: exact(0.06, 'V') }))).toEqual(['passed']);
  });

  it('knows nothing of other specimens and of runs whose clock nobody states', () => {
    expect(triedAtSetting(tried('no-2'), run({ clock: exact(2.4e9, 'Hz') }))).toEqual([]);
    expect(triedAtSetting(tried('no-1'), run({}))).toEqual([]);
  });

  it('tells only settings that did not hold', () => {
    expect(failedAtSetting(tried('no-1'), run({ clock: exact(2.4e9, 'Hz') }))).toEqual(['restarted']);
    expect(failedAtSetting(tried('no-1'), run({ clock: exact(2.2e9, 'Hz') }))).toEqual([]);
  });
});
