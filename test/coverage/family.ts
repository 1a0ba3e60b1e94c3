/** A family of coverage: logs simulated over a set of parameters, with truths in closed form, and what is asked of their figures. */
import type { Figure } from '../../src/figures/figure.ts';
import type { Random } from '../simulator/random.ts';

export interface Family {
  /** A heading for readers. */
  readonly title: string;
  /** What is simulated, and what is true of it, in sentences for readers. */
  readonly words: string;
  /** Trials of each cell in the stored table. */
  readonly trials: number;
  /** Trials of each quick cell in the tests. */
  readonly quick: number;
  readonly cells: readonly Cell[];
}

/** One set of parameters. */
export interface Cell {
  /** The parameters, in words: `16 readings, white noise`. One of its kind in the family. */
  readonly name: string;
  /** One trial. The same draws give the same answers. */
  readonly simulate: (trial: Trial) => readonly (Answer | Saying)[];
  /** Whether two trials with one setting and their own noise are held against each other: identical runs, which must not be told apart. */
  readonly pairs?: boolean;
  /** Whether the tests try it. */
  readonly quick?: boolean;
  /** Why its intervals hold the truth more or less often than 93 % to 97 %, for readers. */
  readonly why?: string;
  /** Said in the stead of `why` where no log can know better: its intervals may hold less often than 90 %. */
  readonly beyond?: string;
}

export interface Trial {
  /** For what both runs of a pair share: where the sensor's steps lie, the device, the parameters. */
  readonly setting: Random;
  /** For chance: what two identical runs do not share. */
  readonly noise: Random;
  /** Name for the run: two runs of a pair must not share what only a name makes the same. */
  readonly run: string;
}

/** A figure, and what is true of it. */
export interface Answer {
  /** What is asked, in the table: mostly the address of the figure. */
  readonly asked: string;
  /** Undefined counts as absent. */
  readonly figure: Figure | undefined;
  /** In the unit of the figure; null where there is none to hold. */
  readonly truth: number | null;
  /** Half width of the 95 % interval that one would give who knew the noise; leave out where there is none. */
  readonly known?: number;
  /** The figure must be absent; what its reason must say. */
  readonly absent?: RegExp;
}

/** A yes or no: a verdict, a warning, a phase that was found. */
export interface Saying {
  readonly asked: string;
  readonly said: boolean;
  /** In which share of trials it may be said at most, and must be at least; 0 and 1 where left out. */
  readonly atMost?: number;
  readonly atLeast?: number;
}
