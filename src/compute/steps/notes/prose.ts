/** The authors' own words about runs, devices and comparisons: Markdown → HTML, their problems told like all others. */
import type { Problem } from '../../../problem.ts';
import type { Register } from '../../../register/register.ts';
import { renderProse } from '../../../words/prose.ts';

export interface ProseOf {
  /** HTML by the file that the words stand in. */
  readonly html: ReadonlyMap<string, string>;
  readonly problems: readonly Problem[];
}

/** Renders the text of every run, device and comparison of the register. */
export function computeProse(register: Register): ProseOf {
  const written = [...register.runs.values(), ...register.devices.values(), ...register.comparisons.values()].filter(
    ({ body }) => body.trim() !== '',
  );
  const rendered = written.map(({ file, body, bodyLine }) => ({ file, ...renderProse(body, { file, line: bodyLine }) }));
  return {
    html: new Map(rendered.map(({ file, html }) => [file, html])),
    problems: rendered.flatMap(({ problems }) => problems),
  };
}
