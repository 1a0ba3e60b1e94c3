import { describe, expect, it } from 'vitest';
import { plotNamed, screenFaults } from '../../../src/words/script/on-screen.ts';
import { scriptOf } from './script-of.ts';

const PLOT = '::plot{kind=trace runs="rated"}';

function faultsOf(text: string, others: Parameters<typeof screenFaults>[3] = []): string[] {
  const { script, entries, plots } = scriptOf(text);
  return screenFaults(script!, entries, plots, others).map(({ rule, found }) => `${rule}: ${found}`);
}

describe('words/script/on-screen', () => {
  it('is silent where the picture shows what the numbers speak of', () => {
    expect(faultsOf(`:::cue\nA trace.\n\n${PLOT}\n:::\n\nIt peaked at :value[rated.peak_temperature].\n`)).toEqual([]);
  });

  it('takes a short name of a plot where it is the only one, also as it stands in an address', () => {
    const plots = [{ id: 'trace-soc-rated-fast' }, { id: 'deltas-steps' }, { id: 'scores-a' }, { id: 'scores-b' }];
    const named = ['trace', 'plot-trace-soc-rated-fast', 'deltas', 'scores', 'tra'].map((name) => plotNamed(name, plots)?.id);
    expect(named).toEqual(['trace-soc-rated-fast', 'trace-soc-rated-fast', 'deltas-steps', undefined, undefined]);
    const known = [{ id: 'plot-trace-temp-low-high' }, { id: 'plot-scores-steps' }];
    expect(['trace', 'scores-steps'].map((name) => plotNamed(name, known)?.id)).toEqual(known.map(({ id }) => id));
  });

  it('tells of runs that are spoken of and not on screen, up to the next cue', () => {
    const text = `:::cue\n${PLOT}\n:::\n\nIt peaked at :value[fast.peak_temperature].\n`;
    expect(faultsOf(text)).toEqual(['off-screen: numbers of fast are said while the screen shows rated']);
    expect(faultsOf(text.replace('\n\nIt', '\n\n:::cue\nThe lid.\n:::\n\nIt'))).toEqual([]);
  });

  it('takes plots of the note by their names, and tells of those that there are none of', () => {
    const text = ':::cue{shows="trace heat"}\nThe trace.\n:::\n\nIt peaked at :value[fast.peak_temperature].\n';
    const trace = { id: 'trace', runs: [{ alias: 'fast', run: 'larch-fast' }] };
    expect(faultsOf(text, [trace])).toEqual(['unknown-picture: a cue that shows `heat`']);
  });
});
