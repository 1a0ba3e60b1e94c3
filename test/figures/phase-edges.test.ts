import { describe, expect, test } from 'vitest';
import { derive } from '../../src/figures/derive.ts';
import { edgesOff } from '../../src/figures/phase-edges.ts';
import { contextOf, every, logOf, noise, phase, presentAt } from './build.ts';

const random = noise(3);
/** W: a load from 300 to 3000 s of an hour. */
const power = (t: number) => (t >= 300 && t < 3000 ? 8 : 2) + 0.2 * random();
const log = logOf(every(1, 3600), { meter: { quantity: 'power', values: power } });
const END = Number.POSITIVE_INFINITY;

/** What is off, in brief. */
const off = (...declared: ReturnType<typeof phase>[]) =>
  edgesOff(log, declared).map((edge) => `${edge.phase.name} ${edge.kind} ${Math.round(edge.off)} at ${Math.round(edge.seen)}`);

describe('declared phases held against the log', () => {
  test('agree where they begin and end with the load, to a few seconds', () => {
    expect(off(phase('idle', 0, 300), phase('load', 300, 3000), phase('cool-down', 3000, END))).toEqual([]);
    expect(off(phase('load', 302, 2998))).toEqual([]);
  });

  test('that are 60 s late are told by the seconds, once for each edge', () => {
    const declared = [phase('idle', 0, 360), phase('load', 360, 3060), phase('cool-down', 3060, END)];
    expect(off(...declared)).toEqual(['load begins 60 at 300', 'load ends 60 at 3000']);
    const idle = presentAt(derive(log, contextOf({ phases: declared })).figures, 'idle_power').quantity.value;
    expect(idle).toBeGreaterThan(2.9);
  });

  test('that are early are told with a minus', () => {
    expect(off(phase('idle', 0, 240), phase('load', 240, 3000))).toEqual(['load begins -60 at 300']);
  });

  test('an edge in a gap of the log is right anywhere in the gap, and off from its ends', () => {
    const t = Float64Array.from([...every(1, 3600)].filter((s) => s < 226 || s > 526));
    const torn = logOf(t, { meter: { quantity: 'power', values: power } });
    const offIn = (from: number) => edgesOff(torn, [phase('load', from, 3000)]).map((edge) => [edge.off, edge.seen]);
    expect(offIn(300)).toEqual([]);
    expect(offIn(500)).toEqual([]);
    expect(offIn(200)).toEqual([[-25, 225]]);
    expect(offIn(600)).toEqual([[73, 527]]);
    const late = Float64Array.from([...every(1, 3600)].filter((s) => s < 2900 || s > 3100));
    const cut = logOf(late, { meter: { quantity: 'power', values: power } });
    const whole = (to: number) => [phase('idle', 0, 300), phase('load', 300, to), phase('cool-down', to, END)];
    expect(edgesOff(cut, whole(3000))).toEqual([]);
    expect(edgesOff(cut, whole(2950))).toEqual([]);
    expect(edgesOff(cut, whole(2700)).map(({ kind, gap }) => [kind, gap])).toEqual([['ends', [2899, 3101]]]);
  });

  test('a load inside another phase is told by its length', () => {
    expect(off(phase('idle', 0, 3600))).toEqual(['idle holds 2700 at 300']);
  });

  test('a load cut in two on purpose, or a phase that runs past the log, is not off', () => {
    expect(off(phase('load', 300, 1200), phase('load-2', 1200, 3000))).toEqual([]);
    const open = logOf(every(1, 2000), { meter: { quantity: 'power', values: power } });
    expect(edgesOff(open, [phase('load', 300, 5000)])).toEqual([]);
  });

  test('nothing is told without a channel that shows a load', () => {
    expect(edgesOff(logOf(every(1, 600), {}), [phase('load', 100, 200)])).toEqual([]);
  });
});
