/** How well runs repeat within a specimen, and how far specimens lie apart. */
import { mean } from '../../statistics/mean.ts';
import { absent, type Of, type Reason } from '../absent.ts';
import { type FigureName, figuresIn } from '../catalogue.ts';
import { type Figure, isPresent, type PresentFigure } from '../figure.ts';
import { counted } from '../in-words.ts';
import type { Entry } from '../soak.ts';
import { groupsOf, type RepeatedRun, type RepeatGroup } from './groups.ts';
import { type Spread, spreadBeyond, spreadFigure, spreadWithin, type Within } from './spread.ts';

/** What is compared besides scores. */
const COMPARED = figuresIn('repeats');

/**
 * `repeatability.<group>.<figure>` and `specimen_spread.<group>.<figure>` of a device, or, without the figure, absent where no specimen
 * was run twice, or only one was run. A group is named by its earliest run. One specimen says nothing of another, so nothing is ever
 * called typical.
 */
export function repeatFigures(device: string, runs: readonly RepeatedRun[]): ReadonlyMap<string, Figure> {
  return new Map(groupsOf(runs).flatMap((group) => [...repeatability(device, group), ...specimenSpread(device, group)]));
}

function repeatability(device: string, group: RepeatGroup): Entry[] {
  const repeated = [...group.specimens.values()].filter((runs) => runs.length > 1);
  if (repeated.length === 0) {
    const why =
      'No specimen was run twice at this setting and under these conditions, so that nothing is known of how runs repeat.';
    return [[`repeatability.${group.id}`, absent('repeatability', { absent: 'too-short', why, of: ofGroup(group) })]];
  }
  return addressesOf(group).map((address) => {
    const values = repeated.map((runs) => valuesAt(runs, address)).filter((each) => each.length > 1);
    return entryOf(device, 'repeatability', group, address, () => spreadWithin(values.map((each) => each.map(valueIn))));
  });
}

function specimenSpread(device: string, group: RepeatGroup): Entry[] {
  const { size } = group.specimens;
  if (size < 2) {
    const why = `One specimen was run at this setting and under these conditions (${counted(group.runs.length, 'run')}): nothing is known of another.`;
    return [[`specimen_spread.${group.id}`, absent('specimen_spread', { absent: 'too-short', why, of: ofGroup(group) })]];
  }
  return addressesOf(group).map((address) => {
    const runs = [...group.specimens.values()]
      .map((of) => valuesAt(of, address).map(valueIn))
      .filter((values) => values.length > 0);
    return entryOf(device, 'specimen_spread', group, address, () => spreadWithin([runs.map(mean)]), withinOf(runs));
  });
}

/** What how runs repeat adds to the variance of specimens' means; null where no specimen was run twice. */
function withinOf(specimens: readonly (readonly number[])[]): Within | null {
  const spread = spreadWithin(specimens);
  return spread && { variance: spread.deviation ** 2 * mean(specimens.map(({ length }) => 1 / length)), dof: spread.dof };
}

function entryOf(
  device: string,
  name: FigureName,
  group: RepeatGroup,
  address: string,
  spread: () => Spread | null,
  within: Within | null = null,
): Entry {
  const full = `${name}.${group.id}.${address}`;
  const figures = valuesAt(group.runs, address);
  const of = { ...ofGroup(group), figure: address };
  const refused = unlike(figures) ?? null;
  const found = refused ? null : spread();
  if (!found) return [full, absent(name, { ...(refused ?? tooFew(address)), of })];
  if (found.deviation === 0)
    return [
      full,
      absent(name, {
        absent: 'out-of-range',
        why: `All values of ${address} are equal: they lie within the step that they are told in.`,
        of,
      }),
    ];
  const from = {
    figures: group.runs.filter(({ figures: own }) => own.has(address)).map(({ run }) => `${run}/${address}`),
    columns: [],
    rows: null,
  };
  const told = { name, address: full, device, spread: found, unit: figures[0]!.quantity.unit, of, from };
  return [full, within ? spreadBeyond(told, within) : spreadFigure(told)];
}

/** Differences of °C are in K; different places and units are not put together. */
function unlike(figures: readonly PresentFigure[]): Reason | undefined {
  const places = new Set(figures.map(({ of }) => of?.at));
  if (places.size > 1) return { absent: 'different-places', why: 'The runs were measured at different places.' };
  const clocks = new Set(figures.map(({ of }) => of?.clock));
  if (clocks.has('requested') && clocks.has('delivered'))
    return { absent: 'different-clocks', why: 'Some of the runs logged the requested clock, others the delivered one.' };
  const units = new Set(figures.map(({ quantity }) => quantity.unit));
  return units.size > 1 ? { absent: 'out-of-range', why: `The runs give it in ${[...units].join(' and in ')}.` } : undefined;
}

function tooFew(address: string): Reason {
  return { absent: 'operand-absent', why: `Fewer than two of the runs have ${address}.` };
}

function ofGroup(group: RepeatGroup): Of {
  return { group: group.id, runs: group.runs.length, specimens: group.specimens.size };
}

/** Figures to compare that any run of the group has, scores by test. */
function addressesOf({ runs }: RepeatGroup): string[] {
  const scores = runs.flatMap(({ figures }) => [...figures.keys()].filter((key) => key.startsWith('score.')));
  return [...COMPARED.filter((key) => valuesAt(runs, key).length > 0), ...new Set(scores)];
}

function valuesAt(runs: readonly RepeatedRun[], address: string): PresentFigure[] {
  return runs.flatMap(({ figures }) => {
    const figure = figures.get(address);
    return figure && isPresent(figure) ? [figure] : [];
  });
}

function valueIn({ quantity }: PresentFigure): number {
  return quantity.value;
}
