/** Colour, dash and marker of a run: those of its alias's place in the note, so that they are the same in all plots of it. */
import type { PlotRequest } from '../../register/requests.ts';
import { MOST_LINES, MOST_STYLES } from './palette.ts';

/**
 * Style of each run of a request, from 0, in the request's order. The seventh run of a note begins anew with the first
 * style; where two runs of one plot would so look alike, styles follow the request's order instead.
 */
export function stylesOf({ runs }: Pick<PlotRequest, 'runs'>): readonly number[] {
  const styles = runs.map(({ slot }) => slot % MOST_LINES);
  return new Set(styles).size === styles.length ? styles : runs.map((_, order) => order % MOST_LINES);
}

/** The same for runs of a comparison, of which more may stand in one plot. */
export function runStyles(runs: readonly { readonly slot: number }[]): readonly number[] {
  const styles = runs.map(({ slot }) => slot % MOST_STYLES);
  return new Set(styles).size === styles.length ? styles : runs.map((_, order) => order % MOST_STYLES);
}

/** Style of the channel at `index` among those of one run that share a panel: the first wears the run's own. */
export function channelStyle(run: number, index: number): number {
  return (run + index) % MOST_LINES;
}
