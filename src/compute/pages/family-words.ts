/** What families of coverage came to, in words of the method and accuracy pages. */
import { definitionOf } from '../../figures/catalogue.ts';
import { type Held, shareOf } from '../../figures/checks/coverage.ts';
import type { FamilyTable } from '../../figures/checks/families.ts';
import {
  type CellHeld,
  type FamilySummary,
  heldInFamilies,
  type IntervalSummary,
  summariesOf,
} from '../../figures/checks/family-summary.ts';
import type { FamilyIntervalModel, FamilyTableModel, MethodEntry } from '../models/method.ts';

/** The family of that name for the accuracy page. */
export function familyModel([name, { title, words, trials, rows }]: readonly [string, FamilyTable]): FamilyTableModel {
  const summaries = summariesOf(rows);
  return {
    id: anchorOf(name),
    title,
    words,
    trials,
    intervals: summaries.flatMap((summary) => (summary.interval ? [intervalModel(summary, summary.interval)] : [])),
    sayings: summaries.flatMap(sayingsOf),
  };
}

/** What the method page says below a figure. */
export function familiesOf(figure: string): MethodEntry['families'] {
  return heldInFamilies(figure).map(({ family, title, interval }) => ({
    id: anchorOf(family),
    title,
    words: heldWords(interval),
    why: interval.why,
  }));
}

function anchorOf(family: string): string {
  return `family-${family}`;
}

/** `95.2 % of 4800 cases, 93.3 % to 97.0 % by set of parameters`. */
function heldWords({ all, least, most, beyond }: IntervalSummary): string {
  const whole = all.of > 0 ? `${shareOf(all)} of ${all.of} cases` : '';
  const range = least && most && least.cell !== most.cell ? `${shareOf(least)} to ${shareOf(most)} by set of parameters` : '';
  const unknowable = beyond ? `${shareOf(beyond)} where no log can know (${beyond.cell})` : '';
  return [whole, range, unknowable].filter((text) => text !== '').join('; ');
}

function intervalModel({ figure, asked, cells }: FamilySummary, interval: IntervalSummary): FamilyIntervalModel {
  const { present, all, least, most, ratio, why } = interval;
  return {
    name: figure ?? asked,
    label: labelOf(figure, asked),
    cells,
    present: shareOf(present),
    held: shareOf(all),
    of: all.of,
    least: least ? shareOf(least) : '–',
    most: most ? shareOf(most) : '–',
    ratio: ratio ? ratio.map((times) => times.toFixed(2)).join(' to ') : '–',
    why,
  };
}

function labelOf(figure: string | null, asked: string): string {
  return (figure && definitionOf(figure)?.label) ?? asked;
}

function sayingsOf({ figure, asked, interval, bounds, pairs, absent, said }: FamilySummary): string[] {
  const label = labelOf(figure, asked);
  const counted = ({ held, of }: Held) => `${held} of ${of}`;
  const others = ({ held, of }: Held) => counted({ held: of - held, of });
  return [
    ...(interval ? extremesOf(label, interval) : []),
    ...(bounds ? [`Bounds of the ${label} where it is absent: ${others(bounds)} were false.`] : []),
    ...(pairs
      ? [
          `Identical runs told apart by the ${label}: ${others(pairs)} pairs (${shareOf({ held: pairs.of - pairs.held, of: pairs.of })}).`,
        ]
      : []),
    ...(absent ? [`The ${label} must be absent: it was, for the cause that there is, in ${counted(absent)} runs.`] : []),
    ...(said ? [`“${asked}”: ${counted(said)}${limitWords(said)}.`] : []),
  ];
}

/** The sets of parameters that hold least. */
function extremesOf(label: string, { all, least, most, beyond }: IntervalSummary): string[] {
  const named = ({ cell }: CellHeld) => `: ${cell}`;
  return [
    ...(least && least.cell !== most?.cell && least.held < least.of && all.of > 0
      ? [`The ${label} holds least, ${shareOf(least)}, in this set${named(least)}.`]
      : []),
    ...(beyond ? [`Where no log can know, the ${label} holds ${shareOf(beyond)} or more; least in this set${named(beyond)}.`] : []),
  ];
}

function limitWords({ atLeast, atMost }: { readonly atLeast?: number; readonly atMost?: number }): string {
  const percent = (share: number) => `${Number((100 * share).toFixed(1))} %`;
  const limits = [
    ...(atLeast === undefined ? [] : [`at least ${percent(atLeast)}`]),
    ...(atMost === undefined ? [] : [`at most ${percent(atMost)}`]),
  ];
  return limits.length === 0 ? '' : `, and should be in ${limits.join(' and ')}`;
}
