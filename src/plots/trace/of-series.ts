/** Runs of a comparison over time, drawn from their series: by stage 1, from a record copy and in the reader's browser alike. */

import { listed } from '../../figures/in-words.ts';
import type { QuantityKind } from '../../intake/log.ts';
import type { SeriesChannel } from '../data/series.ts';
import type { Window } from '../drawing/lines/align.ts';
import type { TraceChannel } from '../drawing/lines/trace-run.ts';
import { MOST_STYLES } from '../drawing/palette.ts';
import type { Plan, Undrawn } from '../drawing/plan.ts';
import { runStyles } from '../drawing/styles.ts';
import { namedTitle } from '../drawing/wording.ts';
import { type TraceSlot, traceOf } from './panels.ts';
import { tracePlan } from './plan.ts';
import { type SeriesSubject, seriesChannel, seriesRun } from './series-run.ts';

export interface ComparedRunSeries extends SeriesSubject {
  /** Place of the run among those of its comparison, from 0: what it looks like follows it. */
  readonly slot: number;
}

/** What a panel shows of each run: its primary channel of a quantity, or the channel of a name. */
export type Pick = { readonly quantity: QuantityKind } | { readonly channel: string };

export interface ComparedTraceOptions {
  /** Panels from top to bottom. */
  readonly panels: readonly Pick[];
  /** Temperatures as rise over ambient. */
  readonly rise?: boolean;
  /** The part of the time axis to draw, s since load start (since the first row where a run has no load); all of it when left out. */
  readonly window?: Window;
  /** Spellings of units, such as `°F` or `mW`: a panel is in the first that its quantity can be given in. */
  readonly units?: readonly string[];
  readonly title?: string;
}

/** Plans the readings of runs on one time axis, aligned at load start; a run that has nothing to draw in a panel is named in the method. */
export function planComparedTrace(runs: readonly ComparedRunSeries[], options: ComparedTraceOptions): Plan | Undrawn {
  const { panels, rise = false, window, units, title } = options;
  if (runs.length === 0) return { why: 'There is no run to draw.' };
  if (runs.length > MOST_STYLES) return { why: `${runs.length} runs in one plot: at most ${MOST_STYLES} can still be told apart.` };
  const picked = panels.map((pick) => pickOf(pick, runs, rise));
  const slots = picked.flatMap(({ slot }) => (slot ? [slot] : []));
  const lacking = picked.flatMap(({ remarks }) => remarks);
  if (slots.length === 0) return { why: lacking.join(' ') || 'No channel is asked for.' };
  const look = { rise, styles: runStyles(runs), ...(window ? { window } : {}), ...(units ? { units } : {}) };
  const trace = traceOf(slots, runs.map(seriesRun), look);
  const drawn = trace.panels.filter(({ lines }) => lines.length > 0);
  if (drawn.length === 0) return { why: 'No run has a reading in this stretch of time.' };
  return tracePlan({ ...trace, panels: drawn }, title, lacking);
}

interface Picked {
  /** Null where no run has anything to draw. */
  readonly slot: TraceSlot | null;
  readonly remarks: readonly string[];
}

function pickOf(pick: Pick, runs: readonly ComparedRunSeries[], rise: boolean): Picked {
  const what = 'channel' in pick ? pick.channel : namedTitle(pick.quantity);
  const found = runs.map(({ series }) => series.channels.find((channel) => fits(channel, pick)));
  const first = found.find((channel) => channel !== undefined);
  if (!first) return { slot: null, remarks: [`No run has readings of ${what}.`] };
  const reasons = found.map((channel) => reasonAgainst(channel, first, what, rise));
  const channels = found.map((channel, run): TraceChannel | null =>
    channel && reasons[run] === null ? seriesChannel(channel) : null,
  );
  const some = channels.some((channel) => channel !== null);
  const names = new Set(found.flatMap((channel, run) => (channel && reasons[run] === null ? [channel.name] : [])));
  return {
    slot: some ? { name: names.size === 1 ? [...names][0]! : what, channels } : null,
    remarks: [...remarksOn(reasons, runs), ...placesOf(found, runs, what)],
  };
}

function fits(channel: SeriesChannel, pick: Pick): boolean {
  return 'channel' in pick ? channel.name === pick.channel : channel.quantity === pick.quantity;
}

/** Why a run's channel is not drawn; null where it is. */
function reasonAgainst(channel: SeriesChannel | undefined, first: SeriesChannel, what: string, rise: boolean): string | null {
  if (!channel) return `no readings of ${what}`;
  if (channel.quantity !== first.quantity || channel.unit !== first.unit) return `${what} in another unit, ${channel.unit}`;
  if (rise && channel.quantity === 'temperature' && !channel.rise) return 'no known ambient';
  return null;
}

/** "Not drawn: fast and slow have no readings of clock." */
function remarksOn(reasons: readonly (string | null)[], runs: readonly ComparedRunSeries[]): string[] {
  const distinct = [...new Set(reasons.filter((reason) => reason !== null))];
  return distinct.map((reason) => {
    const aliases = runs.filter((_, run) => reasons[run] === reason).map(({ alias }) => alias);
    return `Not drawn: ${listed(aliases)} ${aliases.length === 1 ? 'has' : 'have'} ${reason}.`;
  });
}

/** Electrical readings of different places stand in one panel only with a word of it. */
function placesOf(found: readonly (SeriesChannel | undefined)[], runs: readonly ComparedRunSeries[], what: string): string[] {
  const known = found.flatMap((channel, run) => (channel ? [{ alias: runs[run]!.alias, at: channel.at }] : []));
  if (new Set(known.map(({ at }) => at)).size < 2) return [];
  const told = known.map(({ alias, at }) => `${at === undefined ? 'at a place that is not stated' : `at the ${at}`} in ${alias}`);
  return [`Mind that ${what} is measured ${listed(told)}.`];
}
