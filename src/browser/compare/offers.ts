/** What can be drawn of runs: the primary channel of each quantity, and each other channel by its name. */
import type { GatheredRun } from '../../compute/models/gathered.ts';
import type { QuantityKind } from '../../intake/log.ts';
import { tokenOf } from './address.ts';
import { QUANTITIES, type ShownQuantity } from './view.ts';

export interface Offer {
  readonly token: string;
  readonly shown: ShownQuantity;
  /** "Temperature", "Temperature of ssd". */
  readonly label: string;
}

/** In the order of the quantities; channels by first appearance. */
export function offersOf(runs: readonly Pick<GatheredRun, 'series'>[]): Offer[] {
  const channels = runs.map(({ series }) => series.channels);
  return (Object.keys(QUANTITIES) as QuantityKind[]).flatMap((quantity) => {
    const of = channels.map((all) => all.filter((channel) => channel.quantity === quantity));
    const names = new Set(of.flatMap((all) => all.map(({ name }) => name)));
    if (names.size === 0) return [];
    const secondary = new Set(of.flatMap((all) => all.slice(1).map(({ name }) => name)));
    return [null, ...[...names].filter((name) => secondary.has(name))].map((channel) => offer({ quantity, channel }));
  });
}

/** What is asked for and no run has readings of, in a sentence; none where there is nothing. */
export function missingOf(show: readonly ShownQuantity[], runs: readonly Pick<GatheredRun, 'series'>[]): string[] {
  const channels = runs.flatMap(({ series }) => series.channels);
  const has = ({ quantity, channel }: ShownQuantity) =>
    channels.some((each) => each.quantity === quantity && (channel === null || each.name === channel));
  const missing = show
    .filter((each) => !has(each))
    .map((each) => offer(each).label.replace(/^[A-Z]/, (first) => first.toLowerCase()));
  return missing.length === 0 ? [] : [`Not drawn, since no chosen run has such readings: ${missing.join(', ')}.`];
}

function offer(shown: ShownQuantity): Offer {
  const { quantity, channel } = shown;
  return { token: tokenOf(shown), shown, label: channel === null ? QUANTITIES[quantity] : `${QUANTITIES[quantity]} of ${channel}` };
}
