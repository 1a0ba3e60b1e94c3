/** What a family of coverage came to, question by question: its cells counted together, and the cells that hold least and most. */
import { BAND, type Held } from './coverage.ts';
import { FAMILIES, type FamilyRow } from './families.ts';

/** One question of a family, over all its cells. */
export interface FamilySummary {
  /** Name in the catalogue; null where no figure was asked. */
  readonly figure: string | null;
  /** What was asked, where no figure was. */
  readonly asked: string;
  readonly cells: number;
  readonly trials: number;
  readonly interval: IntervalSummary | null;
  /** Bounds that were given, `held` of them true. */
  readonly bounds: Held | null;
  /** Pairs of identical runs, `held` of them not told apart; without cells of which no log can know. */
  readonly pairs: Held | null;
  /** Trials in which the figure must be absent, `held` of them absent for the cause that there is. */
  readonly absent: Held | null;
  /** Trials of a saying, `held` of them with it, and in which share it must be at least and may be at most. */
  readonly said: (Held & Pick<FamilyRow, 'atLeast' | 'atMost'>) | null;
}

/** Intervals of one figure in one family. */
export interface IntervalSummary {
  /** Trials, `held` of them with the figure. */
  readonly present: Held;
  /** Intervals that held the truth, without those of which no log can know. */
  readonly all: Held;
  /** The cells that hold least and most of those that were present often enough to tell; null where there is none. */
  readonly least: CellHeld | null;
  readonly most: CellHeld | null;
  /** The cell that holds least of those of which no log can know; null where there is none. */
  readonly beyond: CellHeld | null;
  /** Least and largest of the cells' median half widths, as multiples of those that one who knew the noise would give; as `all`. */
  readonly ratio: readonly [number, number] | null;
  /** Reasons, each once, of cells outside the band. */
  readonly why: readonly string[];
}

export interface CellHeld extends Held {
  readonly cell: string;
}

/** Cells in which it was present in fewer trials than this tell nothing. */
const ENOUGH = 20;

/** Questions in the order of the table. Sayings that are judged otherwise are other questions. */
export function summariesOf(rows: readonly FamilyRow[]): readonly FamilySummary[] {
  const groups = new Map<string, FamilyRow[]>();
  for (const row of rows) {
    const key = JSON.stringify([row.said === undefined ? (row.figure ?? row.asked) : row.asked, row.atLeast, row.atMost]);
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()].map(summaryOf);
}

/** What families came to of one figure: the family's name, its title and the summary of each that asks for it. */
export function heldInFamilies(
  figure: string,
): readonly { readonly family: string; readonly title: string; readonly interval: IntervalSummary }[] {
  return Object.entries(FAMILIES).flatMap(([family, { title, rows }]) => {
    const interval = intervalOf(rows.filter((row) => row.figure === figure));
    return interval && interval.all.of + (interval.beyond?.of ?? 0) > 0 ? [{ family, title, interval }] : [];
  });
}

function summaryOf(rows: readonly FamilyRow[]): FamilySummary {
  const [first] = rows as [FamilyRow];
  const { atLeast, atMost } = first;
  const knowable = rows.filter((row) => !row.beyond);
  return {
    figure: rows.find((row) => row.figure !== null)?.figure ?? null,
    asked: first.asked,
    cells: new Set(rows.map(({ cell }) => cell)).size,
    trials: sum(rows, ({ trials }) => trials),
    interval: intervalOf(rows),
    bounds: sharing(rows, ({ bounds, falseBounds = 0 }) => bounds && { held: bounds - falseBounds, of: bounds }),
    pairs: sharing(knowable, ({ pairs, apart = 0 }) => pairs && { held: pairs - apart, of: pairs }),
    absent: sharing(rows, ({ absent, caused = 0, trials }) => absent !== undefined && { held: caused, of: trials }),
    said:
      first.said === undefined
        ? null
        : {
            held: sum(rows, ({ said = 0 }) => said),
            of: sum(rows, ({ trials }) => trials),
            ...(atLeast === undefined ? {} : { atLeast }),
            ...(atMost === undefined ? {} : { atMost }),
          },
  };
}

/** Null where no interval was asked for. */
function intervalOf(rows: readonly FamilyRow[]): IntervalSummary | null {
  const own = rows.filter(({ present }) => present !== undefined);
  if (own.length === 0) return null;
  const heldOf = ({ cell, held = 0, present = 0 }: FamilyRow): CellHeld => ({ cell, held, of: present });
  const enough = own.filter(({ present = 0 }) => present >= ENOUGH);
  const byShare = (from: readonly FamilyRow[]) => from.map(heldOf).sort((a, b) => shareOf(a) - shareOf(b));
  const ranked = byShare(enough.filter((row) => !row.beyond));
  const ratios = own.flatMap(({ ratio, beyond }) => (beyond ? [] : (ratio ?? [])));
  return {
    present: { held: sum(own, ({ present = 0 }) => present), of: sum(own, ({ trials }) => trials) },
    all: sharing(
      own.filter((row) => !row.beyond),
      heldOf,
    ) ?? { held: 0, of: 0 },
    least: ranked[0] ?? null,
    most: ranked.at(-1) ?? null,
    beyond: byShare(enough.filter((row) => row.beyond))[0] ?? null,
    ratio: ratios.length > 0 ? [Math.min(...ratios), Math.max(...ratios)] : null,
    why: [...new Set((ranked.length > 0 ? enough : own).filter(isOutside).map(({ why }) => why))].filter((text) => text !== ''),
  };
}

function isOutside({ held = 0, present = 0 }: FamilyRow): boolean {
  const share = held / present;
  return present > 0 && (share < BAND[0] || share > BAND[1]);
}

function shareOf({ held, of }: Held): number {
  return held / of;
}

/** The sum of what rows have; null where none has any. */
function sharing(rows: readonly FamilyRow[], of: (row: FamilyRow) => Held | undefined | false | 0): Held | null {
  const all = rows.flatMap((row) => of(row) || []);
  return all.length === 0 ? null : { held: sum(all, ({ held }) => held), of: sum(all, (each) => each.of) };
}

function sum<T>(list: readonly T[], of: (each: T) => number): number {
  return list.reduce((total, each) => total + of(each), 0);
}
