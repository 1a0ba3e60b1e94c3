/** What holds for all figures, in prose for readers. Markdown. */
import { HEDGES_CHAPTER } from './hedges.ts';
import { STEADY_CHAPTER } from './steady-criteria.ts';

export const CHAPTERS: readonly { readonly id: string; readonly title: string; readonly markdown: string }[] = [
  {
    id: 'uncertainty',
    title: 'Uncertainty',
    markdown: `A figure carries its value and, by name, every independent cause of its uncertainty: an instrument's gain, an instrument's
offset, the stated ambient, the scatter of the readings. What two figures share cancels in their difference; what they do not share
adds as a root sum of squares. This is the law of propagation of uncertainty of JCGM 100:2008 (GUM), 5.1 and 5.2, with correlation
carried exactly instead of as coefficients.

Limits that a data sheet or an author states are taken as rectangular: the standard uncertainty is the half width over √3
(JCGM 100:2008, 4.3.7). A reading is never taken as better than its step over √12. Where a sensor states no accuracy, the figure is
marked *repeatability only*: it can be compared with another run on the same specimen, and says nothing about another thermometer.

The number after ± on these pages is the half width of the 95 % interval: Student's factor for the effective degrees of
freedom (Welch–Satterthwaite, JCGM 100:2008, G.4.1) times the standard uncertainty. An error that lies anywhere within limits never leaves
them: limits alone hold 95 % within 0.95 of their half width, or 1.65 standard uncertainties (JCGM 100:2008, G.1.3). So where sources
are known by limits, the largest of them is propagated as a rectangular distribution, and everything else beside it as a normal one, or
as Student's where it rests on few readings (JCGM 101:2008, 5.6.2, 6.4.2 and 6.4.9). Further limits count as normal, which makes the
interval at most 1.4 % too narrow and at most 1.1 % too wide. The JSON files hold standard uncertainties (k = 1), and say of a source that it is rectangular.`,
  },
  {
    id: 'rounding',
    title: 'Rounding',
    markdown: `Values are rounded by their uncertainty, once, at the last moment, on the decimal numeral, ties to even
(JCGM 100:2008, 7.2.6; ISO 80000-1, Annex B, rule A), and never finer than the step of the instrument. The files beside each page
hold the unrounded numbers.`,
  },
  {
    id: 'time',
    title: 'Time, phases and gaps',
    markdown: `Time runs from the first row of the log that can be trusted. A phase is half open: a row at its end belongs to the next one,
except in the last phase. Rows that cannot be trusted are set aside and listed on the run's page; they are never padded, shifted or
sorted. A step of more than five times the median step is a gap: means and energies leave it out, charts break their line there.
A criterion of steady state takes no gap for calm: a window counts where four fifths of it or more were read.

Phases that an author declares are held against the log: where its power (else utilisation, clock, current or temperature) shows the load
to begin or end elsewhere, the check says by how many seconds. Phases that are left to the log are named \`idle\`, \`load\` and
\`cool-down\`; where there is more than one load, \`pause\`, \`load-2\` and so on. Figures of the load are those of \`load\`.`,
  },
  {
    id: 'plots',
    title: 'Plots',
    markdown: `Figures use every row. Lines are thinned for drawing only: each column of pixels keeps its first, last, lowest and highest reading
(Jugel, Jerzak, Hackenbroich and Markl, “M4: A Visualization-Oriented Time Series Data Aggregation”, PVLDB 7(10), 2014), so that no peak is lost.`,
  },
  STEADY_CHAPTER,
  HEDGES_CHAPTER,
];
