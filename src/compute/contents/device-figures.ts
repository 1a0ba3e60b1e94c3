/** Figures of a device, from all that published notes reach of it: `devices/<id>/figures.json` is made of one map. */
import type { FigureMap } from '../../figures/figure.ts';
import { figuresJson } from '../../figures/figures-json.ts';
import type { RepeatedRun } from '../../figures/repeats/groups.ts';
import { repeatFigures } from '../../figures/repeats/repeats.ts';
import { attemptsHead } from '../../figures/stability/attempts-json.ts';
import { stabilityFigures } from '../../figures/stability/stability.ts';
import { likenessOf } from '../../register/resolved/likeness.ts';
import { BROUGHT } from '../../register/values/condition-kinds.ts';
import type { ComputedAttempts, ComputedRun, SiteContents } from './site-contents.ts';

/** How runs repeat and specimens differ. Runs that no published note reaches are not in it. */
function deviceRepeats(parts: Pick<SiteContents, 'runs'>, device: string): FigureMap {
  const runs = [...parts.runs.values()].filter(({ run }) => run.device === device);
  return repeatFigures(device, runs.map(repeatedRun));
}

/** All that is tried of a device. */
export function attemptsOf({ attempts }: Pick<SiteContents, 'attempts'>, device: string): ComputedAttempts[] {
  return [...attempts.values()].filter((tried) => tried.attempts.device === device);
}

/** A device as other programs read it: `devices/<id>/figures.json`. */
export function deviceJson(parts: Pick<SiteContents, 'runs' | 'attempts'>, device: string): object {
  const tried = attemptsOf(parts, device);
  const head = attemptsHead(tried.map(({ attempts, ladder, sha256 }) => ({ id: attempts.id, ladder, sha256 })));
  const stability = tried.length === 0 ? [] : stabilityFigures(tried.map(({ ladder }) => ladder));
  return figuresJson({ device, ...head }, new Map([...deviceRepeats(parts, device), ...stability]));
}

/** Alike but for what the day brought. */
function repeatedRun({ run, derived }: ComputedRun): RepeatedRun {
  const likeness = likenessOf(run, BROUGHT);
  return { run: run.id, specimen: run.specimen, date: run.date, likeness, figures: derived.figures };
}
