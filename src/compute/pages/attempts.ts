/** How a device's page shows the settings that were tried on its specimens. */
import { clockQuantity } from '../../figures/stability/ladder.ts';
import { offsetText } from '../../plots/stability/words.ts';
import { printQuantity } from '../../quantities/print.ts';
import { inLine, shownFigure } from '../contents/figure-text.ts';
import { attemptsPath, type ComputedAttempts, pagePlot, type SiteContents } from '../contents/site-contents.ts';
import type { AttemptsModel } from '../results.ts';

/** One table of attempts with its figures and its plot. */
export function attemptsModel({ data }: SiteContents, { attempts, ladder, figures, plot }: ComputedAttempts): AttemptsModel {
  return {
    id: attempts.id,
    title: attempts.title,
    specimen: attempts.specimen,
    passed: passedText(attempts.passed),
    rows: ladder.attempts.map(({ offset, outcome, note, ...attempt }) => ({
      clock: printQuantity(clockQuantity(attempt)).text,
      offset: offsetText(offset),
      outcome,
      note,
    })),
    figures: inLine([...figures].map(([address, figure]) => shownFigure(address, figure))),
    plot: plot === null ? null : pagePlot(plot, attemptsPath(attempts)),
    file: ladder.file,
    data: data.get(`attempts/${attempts.id}`) ?? [],
  };
}

/** "integer mix 3.1, 60 min, at 22.5 ± 1.0 °C". */
function passedText(passed: ComputedAttempts['attempts']['passed']): string {
  const { test, duration, ambient } = passed ?? {};
  return [
    ...(test === undefined ? [] : [test]),
    ...(duration === undefined ? [] : [printQuantity({ value: duration, unit: 's', parts: [] }).text]),
    ...(ambient === undefined ? [] : [`at ${ambient}`]),
  ].join(', ');
}
