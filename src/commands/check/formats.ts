/** The problems of a check for other programs: plain JSON, and the form that code hosts show beside the line. */
import { compareText, type Place, type Problem } from '../../problem.ts';

/** `check --json`. */
export function problemsJson(problems: readonly Problem[]): object {
  return {
    format: 1,
    errors: problems.filter(({ severity }) => severity === 'error').length,
    warnings: problems.filter(({ severity }) => severity === 'warning').length,
    problems: problems.map(({ severity, rule, place, found, expected, remedy }) => {
      const { file, line, column, endLine, endColumn } = place;
      return { severity, rule, file, line, column, end_line: endLine, end_column: endColumn, found, expected, remedy };
    }),
  };
}

/** `check --json` where nothing could be checked. */
export function notCheckedJson(why: string): object {
  return { format: 1, not_checked: why };
}

/** `check --sarif` where nothing could be checked: a run that failed, with its reason (SARIF 2.1.0, 3.20.14 and 3.20.21). */
export function notCheckedSarif(why: string, version: string): object {
  const failed = { executionSuccessful: false, toolExecutionNotifications: [{ level: 'error', message: { text: why } }] };
  const { runs, ...log } = problemsSarif([], version) as { runs: readonly [object] };
  return { ...log, runs: [{ ...runs[0], invocations: [failed] }] };
}

/**
 * `check --sarif`: a log in the Static Analysis Results Interchange Format 2.1.0 (OASIS Standard, 27 March 2020), without paths of the machine.
 * Columns count UTF-16 units in both.
 */
export function problemsSarif(problems: readonly Problem[], version: string): object {
  const rules = [...new Set(problems.map(({ rule }) => rule))].sort(compareText);
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Soakproof', version, rules: rules.map((id) => ({ id })) } },
        columnKind: 'utf16CodeUnits',
        results: problems.map((problem) => ({
          ruleId: problem.rule,
          ruleIndex: rules.indexOf(problem.rule),
          level: problem.severity,
          message: { text: sentences(problem) },
          locations: [
            { physicalLocation: { artifactLocation: { uri: uriOf(problem.place.file) }, region: regionOf(problem.place) } },
          ],
        })),
      },
    ],
  };
}

/** What is wrong, what would be right, what to do: a message of one text. */
function sentences({ found, expected, remedy }: Problem): string {
  const said = [
    found,
    ...(expected === undefined ? [] : [`Expected: ${expected}`]),
    ...(remedy === undefined ? [] : [`To do: ${remedy}`]),
  ];
  return said.map((sentence) => (/[.!?…]$/.test(sentence) ? sentence : `${sentence}.`)).join(' ');
}

function uriOf(file: string): string {
  return file.split('/').map(encodeURIComponent).join('/');
}

/** The end is exclusive in both; one that does not lie behind the beginning is left out. */
function regionOf({ line, column, endLine = line, endColumn }: Place): object {
  const start = { startLine: line, startColumn: column };
  if (endColumn === undefined || (endLine === line && endColumn <= column)) return start;
  return { ...start, endLine, endColumn };
}
