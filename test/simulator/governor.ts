/** The governor of the invented device: it steps the clock down at the limit, and up again below it. */

export interface GovernorOptions {
  /** Reading of the die sensor at which the clock goes down by a step, °C. */
  readonly limit: number;
  /** It goes up again once the reading is this far below the limit, K. */
  readonly hysteresis: number;
  /** Hz. */
  readonly step: number;
  readonly lowest: number;
  /** Least time between two steps up, s: down is quick, up is slow. */
  readonly patience: number;
}

export interface GovernorState {
  /** Hz. */
  readonly clock: number;
  /** True while the clock is below what was asked for because of the limit. */
  readonly throttled: boolean;
  /** When it last stepped, s. */
  readonly since: number;
}

/** The governor after a cold start at the clock asked for. */
export function atEase(clock: number): GovernorState {
  return { clock, throttled: false, since: Number.NEGATIVE_INFINITY };
}

/** One decision: `reading` of the die sensor in °C, `asked` the clock of the setting in Hz, `now` in s. */
export function govern(options: GovernorOptions, state: GovernorState, reading: number, asked: number, now: number): GovernorState {
  const stepTo = (clock: number): GovernorState => ({ clock, throttled: clock < asked, since: now });
  const own = Math.min(state.clock, asked);
  if (reading >= options.limit) return stepTo(Math.max(own - options.step, options.lowest));
  if (!state.throttled) return state.clock === asked ? state : stepTo(asked);
  if (reading > options.limit - options.hysteresis || now - state.since < options.patience) return { ...state, clock: own };
  return stepTo(Math.min(own + options.step, asked));
}
