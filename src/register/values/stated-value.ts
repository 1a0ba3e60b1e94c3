/** What a file states, before inheritance: values together with their places. */
import type { DeclaredPhase } from '../../figures/context.ts';
import type { ClockShows, Known, MeasuredAt, QuantityKind, TimeFormat } from '../../intake/log.ts';
import type { Place } from '../../problem.ts';
import type { Licence } from '../register.ts';
import type { TextNode } from '../yaml/node.ts';
import type { StatedQuantity } from './quantity-value.ts';

export interface Stated<T> {
  readonly value: T;
  readonly place: Place;
}

/** The id of another file, where it is named. */
export type Reference = Stated<string>;

export interface StatedCondition {
  readonly name: string;
  readonly text: string;
  readonly quantity?: StatedQuantity;
  /** Of the supply: where its voltage holds. */
  readonly at?: MeasuredAt;
}

export interface StatedChannel {
  readonly name: string;
  readonly place: Place;
  readonly label?: Stated<string>;
  readonly quantity?: Stated<QuantityKind>;
  readonly column?: Stated<string>;
  readonly unit?: Stated<string>;
  readonly unit_reason?: Stated<string>;
  readonly at?: Stated<MeasuredAt>;
  readonly instrument?: Reference;
  readonly missing?: Stated<readonly string[]>;
  readonly bits?: Stated<Readonly<Record<string, string>>>;
  readonly sticky?: Stated<Readonly<Record<string, string>>>;
  readonly shows?: Stated<ClockShows>;
  /** As written: what it is measured in depends on the quantity, which the setup may state. */
  readonly step?: TextNode;
  /** Name of its log, where the run has several. */
  readonly log?: Reference;
}

export interface StatedTime {
  readonly column?: string;
  readonly format?: TimeFormat;
  readonly unit?: string;
  readonly zone?: string;
  /** Epoch seconds. */
  readonly start?: number;
  /** Whether day or month stands first. */
  readonly order?: 'dmy' | 'mdy';
  /** Seconds from row to row of a log without a time. */
  readonly every?: number;
}

/** What a setup and a run can both state. */
export interface Shared {
  readonly device?: Reference;
  readonly specimen?: string;
  readonly conditions: ReadonlyMap<string, StatedCondition>;
  readonly setting: ReadonlyMap<string, StatedCondition>;
  readonly instruments?: Stated<readonly Reference[]>;
  readonly channels: ReadonlyMap<string, StatedChannel>;
  /** Channels of the setup that a run does not have (`ssd: none`). */
  readonly without: readonly Reference[];
  readonly phases?: Stated<'auto' | readonly DeclaredPhase[]>;
  readonly steady?: string;
  /** What is known of every run's channels and phases. */
  readonly known: readonly Known[];
  readonly licence?: Licence;
}

/** What a run states laid over what its setup states. */
export type Inherited = Omit<Shared, 'without'>;
