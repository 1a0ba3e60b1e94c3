import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { copyFile, sealedCopy } from '../../../src/compute/record-copies/copy.ts';
import { readCopies } from '../../../src/compute/record-copies/read-copies.ts';
import { canonicalText, sealOf } from '../../../src/compute/store/canonical-json.ts';
import type { RecordCopy } from '../../../src/register/sealed/record-copies.ts';
import { DEMONSTRATION } from '../../demonstration-folder.ts';
import { copyOf, recorded, recordedRun, temperature } from './recorded.ts';

const COPY = copyOf();
const TEXT = sealedCopy(COPY);
const PATH = copyFile(COPY.id);
const problemsOf = (text: string, path = PATH) => readCopies([{ path, text }]).problems;
const foundIn = (text: string) => problemsOf(text)[0]?.found;

/** A copy that another program sealed rightly around a record that ours would not write. */
function forged(change: (record: Record<string, never>) => void): string {
  const record = structuredClone(COPY.record) as unknown as Record<string, never>;
  change(record);
  return sealedCopy(copyOf(record as unknown as RecordCopy['record']));
}

describe('compute/record-copies/read-copies', () => {
  it('reads what was sealed, newest first', () => {
    const { copies, problems } = readCopies([{ path: PATH, text: TEXT }]);
    expect(problems).toEqual([]);
    expect(copies).toMatchObject([{ copy: COPY, text: TEXT, sha256: expect.stringMatching(/^[0-9a-f]{64}$/) }]);
    const later = copyOf(recorded(), '2026-05-01');
    const files = [COPY, later].map((copy) => ({ path: copyFile(copy.id), text: sealedCopy(copy) }));
    expect(readCopies(files).copies.map(({ copy }) => copy.date)).toEqual(['2026-05-01', '2026-03-20']);
  });

  it("reads the demonstration's, which an earlier version wrote", () => {
    const folder = join(DEMONSTRATION, 'content', 'record-copies');
    const files = readdirSync(folder).map((name) => ({
      path: `content/record-copies/${name}`,
      text: readFileSync(join(folder, name), 'utf8'),
    }));
    const { copies, problems } = readCopies(files);
    expect(problems).toEqual([]);
    expect(copies.map(({ copy }) => copy.record.id)).toEqual(['larch-steps']);
  });

  it('is named by the comparison and the digest of all that it holds', () => {
    const { id, ...content } = COPY;
    expect(id).toBe(`larch-steps-${sealOf(content).slice(0, 12)}`);
    expect(copyOf(recorded({ title: 'Two settings.' })).id).not.toBe(id);
    expect(copyOf(recorded(), '2026-03-21').id).not.toBe(id);
  });

  it('refuses any one byte that was changed, and says of which file', () => {
    const refused: string[] = [];
    for (let at = 0; at < TEXT.length; at += 7) {
      const byte = TEXT[at] === '1' ? '2' : '1';
      const [problem] = problemsOf(TEXT.slice(0, at) + byte + TEXT.slice(at + 1));
      refused.push(problem === undefined ? `byte ${at} was not missed` : `${problem.severity} ${problem.place.file}`);
    }
    expect([...new Set(refused)]).toEqual([`error ${PATH}`]);
    expect(problemsOf(TEXT.replace('71.3', '71.4'))).toEqual([
      {
        severity: 'error',
        rule: 'record-copy',
        place: { file: PATH, line: 1, column: 1 },
        found: 'this record copy is not as `npm run record` wrote it',
        expected: 'its own digest over all that it holds',
        remedy: 'no one edits this file by hand: bring back what was committed',
      },
    ]);
  });

  it('refuses bytes that are not canonical, though they say the same', () => {
    for (const same of [
      `${TEXT}\n`,
      TEXT.trimEnd(),
      TEXT.replace('\n', '\r\n'),
      `\uFEFF${TEXT}`,
      JSON.stringify(JSON.parse(TEXT), null, 2),
      TEXT.replace('71.3', '7.13e1'),
      TEXT.replace('{"date"', '{"date":"2026-01-01","date"'),
    ]) {
      expect(problemsOf(same), same.slice(0, 40)).toHaveLength(1);
    }
  });

  it('refuses a copy under another name, and an id that its content does not have', () => {
    expect(problemsOf(TEXT, 'content/record-copies/other.json')[0]).toMatchObject({
      found: `this is the record copy ${COPY.id}`,
      expected: `it in ${PATH}: its name is its address, for ever`,
    });
    expect(foundIn(sealedCopy({ ...COPY, id: 'larch-steps-000000000000' }))).toContain('is not as');
  });

  it('says what else lies in the folder', () => {
    for (const path of ['content/record-copies/notes.txt', 'content/record-copies/2026/a.json', 'content/record-copies/.json/x']) {
      expect(problemsOf(TEXT, path)[0]).toMatchObject({ place: { file: path }, found: 'this is not a record copy' });
    }
  });

  it('says of a format that is not known which version reads it', () => {
    const { id: _id, ...content } = COPY;
    const other = { ...content, format: 2 };
    const text = canonicalText({ ...other, id: COPY.id, sha256: sealOf(other) });
    expect(problemsOf(text)[0]).toMatchObject({
      found: 'this record copy is of format 2',
      remedy: expect.stringContaining('the version that wrote it'),
    });
  });

  it('names what a well sealed copy of somebody else gets wrong', () => {
    const run = (more: object) => (record: { runs: unknown[] }) => {
      record.runs[1] = recordedRun('fast', 71.3, more as never);
    };
    const line = { name: 'soc', quantity: 'temperature', unit: '°C', decimals: 1, breaks: [] };
    const series = (channel: object) => run({ series: { ...COPY.record.runs[1]!.series, channels: [{ ...line, ...channel }] } });
    const cases: [change: (record: never) => void, found: RegExp][] = [
      [run({ date: '2026-02-30' }), /at `record\.runs\.1\.date` a text that is not a day/],
      [run({ run: '../etc' }), /at `record\.runs\.1\.run` a text that is not an id/],
      [run({ alias: 'a b' }), /no alias/],
      [run({ more: 1 }), /at `record\.runs\.1\.more` "more" where never belongs/],
      [run({ specimen: 3 }), /3 where string belongs/],
      [run({ log: { file: 'x', sha256: 'abc', rows: 1, span_s: 1 } }), /no SHA-256/],
      [run({ figures: { x: { ...temperature(1), value: 'hot' } } }), /figures\.x/],
      [run({ figures: { x: { ...temperature(1), parts: { 'nobody/knows': 1 } } } }), /source that is not named/],
      [series({ t: [0, 1], y: [1] }), /a line whose times do not ascend, or whose readings are more or fewer/],
      [series({ t: [1, 1], y: [1, 2] }), /a line whose times/],
      [series({ t: [0, 1], y: [1, 2], breaks: [2] }), /a line whose times/],
      [(record: { reference: string }) => (record.reference = 'none'), /a reference that is none of its runs/],
      [(record: { runs: unknown[] }) => record.runs.pop(), /fewer than two runs/],
      [run({ alias: 'rated' }), /two runs of one alias/],
      [run({ run: 'larch-rated' }), /one run twice/],
    ];
    for (const [change, found] of cases) expect(foundIn(forged(change as never))).toMatch(found);
  });

  it('survives whatever else a file can be', () => {
    const lone = canonicalText({ ...COPY, sha256: '' }).replace('Two settings', '\\ud800');
    const deep = '['.repeat(2_000_000);
    const wide = `{"date":"2026-03-20","format":1,"record":${'{"a":'.repeat(500_000)}`;
    const long = TEXT.replace('Two settings', 'x'.repeat(5_000_000));
    const many = forged((record) =>
      Object.assign(record, { figures: Object.fromEntries(Array.from({ length: 20_000 }, (_, i) => [`f${i}`, 1])) }),
    );
    for (const text of [
      '',
      'null',
      '[]',
      '{}',
      '1',
      '"',
      '{"format":1}',
      '{"__proto__":1}',
      lone,
      deep,
      wide,
      long,
      many,
      TEXT.replace('71.3', '1e999'),
    ]) {
      const [problem] = problemsOf(text);
      expect(problem).toMatchObject({ severity: 'error', place: { file: PATH } });
      expect(problem!.found.length).toBeLessThan(400);
    }
  });
});
