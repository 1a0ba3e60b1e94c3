import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { notCheckedJson, notCheckedSarif, problemsJson, problemsSarif } from '../../../src/commands/check/formats.ts';
import { error, type Problem, warning } from '../../../src/problem.ts';

/** Source: see README.md beside the schema. It is of draft 4; what it uses of it means the same in the draft that the validator reads. */
const {
  $schema: _draft,
  id: _address,
  ...SCHEMA
} = JSON.parse(readFileSync(join(import.meta.dirname, '..', '..', 'fixtures', 'sarif', 'sarif-schema-2.1.0-rtm.5.json'), 'utf8'));
const ajv = new Ajv({ strict: false, unicodeRegExp: false });
addFormats.default(ajv);
const isSarif = ajv.compile(SCHEMA);

const PROBLEMS: readonly Problem[] = [
  error(
    'stated-false',
    { file: 'content/notes/ä b.md', line: 14, column: 9, endColumn: 20 },
    'stated 74 °C, the data says 71.3 °C',
    {
      expected: '71 degrees',
      remedy: 'write "71 degrees"',
    },
  ),
  warning('gap', { file: 'data/soak.csv', line: 3, column: 1 }, '12 s without rows'),
  warning('gap', { file: 'data/soak.csv', line: 9, column: 4, endLine: 10, endColumn: 2 }, '40 s without rows'),
];

describe('commands/check/formats', () => {
  it('is valid SARIF 2.1.0 by its published schema, with and without problems', () => {
    for (const problems of [PROBLEMS, []])
      expect([isSarif(problemsSarif(problems, '0.2.0')), isSarif.errors]).toEqual([true, null]);
  });

  it('is refused by that schema where something is wrong with it', () => {
    const log = problemsSarif(PROBLEMS, '0.2.0') as { runs: [{ results: [{ level: string; locations: object[] }] }] };
    expect(isSarif({ ...log, version: '2.0.0' })).toBe(false);
    expect(isSarif({ ...log, results: [] })).toBe(false);
    const [run] = log.runs;
    expect(isSarif({ ...log, runs: [{ ...run, results: [{ ...run.results[0], level: 'fatal' }] }] })).toBe(false);
    const region = { physicalLocation: { region: { startLine: 0 } } };
    expect(isSarif({ ...log, runs: [{ ...run, results: [{ ...run.results[0], locations: [region] }] }] })).toBe(false);
  });

  it('says why nothing was checked, in the same forms', () => {
    const log = notCheckedSarif('Another check is under way.', '0.2.0');
    expect([isSarif(log), isSarif.errors]).toEqual([true, null]);
    expect(log).toMatchObject({
      runs: [{ results: [], invocations: [{ executionSuccessful: false, toolExecutionNotifications: [{ level: 'error' }] }] }],
    });
    expect(notCheckedJson('Another check is under way.')).toEqual({ format: 1, not_checked: 'Another check is under way.' });
  });

  it('ends a sentence that has its full stop with no other', () => {
    const place = { file: 'a.md', line: 1, column: 1 };
    const { runs } = problemsSarif([error('a', place, 'wrong', { expected: 'right.', remedy: 'did you mean `x`?' })], '0.2.0') as {
      runs: [{ results: [{ message: { text: string } }] }];
    };
    expect(runs[0].results[0].message.text).toBe('wrong. Expected: right. To do: did you mean `x`?');
  });

  it('names rule, level, file and region of each, and its sentences', () => {
    expect(problemsSarif(PROBLEMS, '0.2.0')).toMatchObject({
      runs: [
        {
          tool: { driver: { name: 'Soakproof', version: '0.2.0', rules: [{ id: 'gap' }, { id: 'stated-false' }] } },
          results: [
            {
              ruleId: 'stated-false',
              ruleIndex: 1,
              level: 'error',
              message: {
                text: 'stated 74 °C, the data says 71.3 °C. Expected: 71 degrees. To do: write "71 degrees".',
              },
              locations: [
                {
                  physicalLocation: {
                    artifactLocation: { uri: 'content/notes/%C3%A4%20b.md' },
                    region: { startLine: 14, startColumn: 9, endLine: 14, endColumn: 20 },
                  },
                },
              ],
            },
            { ruleIndex: 0, locations: [{ physicalLocation: { region: { startLine: 3, startColumn: 1 } } }] },
            { locations: [{ physicalLocation: { region: { startLine: 9, startColumn: 4, endLine: 10, endColumn: 2 } } }] },
          ],
        },
      ],
    });
  });

  it('says the same as plain JSON, with the count', () => {
    const told = JSON.parse(JSON.stringify(problemsJson(PROBLEMS)));
    expect(told).toMatchObject({ format: 1, errors: 1, warnings: 2 });
    expect(told.problems[1]).toEqual({
      severity: 'warning',
      rule: 'gap',
      file: 'data/soak.csv',
      line: 3,
      column: 1,
      found: '12 s without rows',
    });
  });
});
