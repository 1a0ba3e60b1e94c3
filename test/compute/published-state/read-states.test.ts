import { describe, expect, it } from 'vitest';
import { readStates, sealed, statePath } from '../../../src/compute/published-state/read-states.ts';
import { entry, state } from './states.ts';

const STATE = state([entry('fast.peak_temperature', '71.3 °C')]);
const TEXT = sealed(STATE);
const PATH = statePath(STATE.of);
const problemsOf = (text: string, path = PATH) => readStates([{ path, text }]).problems;

describe('compute/published-state/read-states', () => {
  it('reads what was sealed', () => {
    expect(PATH).toBe('content/published/notes-larch.json');
    expect(readStates([{ path: PATH, text: TEXT }])).toEqual({ states: new Map([['notes/larch', STATE]]), problems: [] });
  });

  it('is canonical JSON: sorted keys, no blanks, the same whatever the order of making (RFC 8785)', () => {
    const { format, ...rest } = STATE;
    expect(sealed({ ...rest, format })).toBe(TEXT);
    expect(TEXT).toMatch(/^\{"addresses":\[.*\],"date":"2026-03-20","entries":\[\{"column":12,.*\}\n$/);
  });

  it('refuses a state that was edited by hand, and protects nothing with it', () => {
    const edited = readStates([{ path: PATH, text: TEXT.replace('71.3 °C', '72.1 °C') }]);
    expect(edited.states.size).toBe(0);
    expect(edited.problems).toMatchObject([
      { severity: 'error', rule: 'published-state', place: { file: PATH, line: 1, column: 1 } },
    ]);
    expect(problemsOf(`${TEXT}\n`)).toHaveLength(1);
    expect(problemsOf(JSON.stringify(JSON.parse(TEXT), null, 2))).toHaveLength(1);
  });

  it('locates JSON that cannot be read, and says what is no state', () => {
    expect(problemsOf('{"format":1,\n  oops}')[0]).toMatchObject({ place: { line: 2, column: 3 }, found: 'this is not JSON' });
    expect(problemsOf('{"format":2}')[0]?.found).toContain('this is not a published state');
    expect(problemsOf('[]')[0]?.found).toContain('this is not a published state');
  });

  it('refuses a state under the name of another', () => {
    expect(problemsOf(TEXT, 'content/published/notes-other.json')[0]?.expected).toBe('it in content/published/notes-larch.json');
  });
});
