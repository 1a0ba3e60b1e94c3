/** What a run came to, in the few words by which runs are looked for. */
import { isPresent, type RunFigures } from '../../figures/figure.ts';
import { type Ladder, OUTCOMES as TRIED, type Outcome as Tried } from '../../figures/stability/ladder.ts';
import type { Run } from '../../register/register.ts';
import type { SiteContents } from '../contents/site-contents.ts';
import type { Choice } from '../models/discovery.ts';

/** A run with what came of its setting where that was tried on its specimen. */
export interface Told {
  readonly derived: RunFigures;
  readonly tried: readonly Tried[];
}

/** What a soak itself does not tell: the others it says in its own figures. */
const FAILED = TRIED.filter((outcome) => outcome !== 'passed' && outcome !== 'throttled');

/** In the order in which they are offered and printed. */
export const OUTCOMES: readonly (Choice & { readonly of: (run: Told) => boolean })[] = [
  { id: 'throttled', title: 'throttled', of: ({ derived }) => isPositive(derived, 'throttle_events') },
  { id: 'held-at-limit', title: 'held at limit', of: ({ derived }) => isPositive(derived, 'held_at_limit') },
  { id: 'steady', title: 'steady', of: ({ derived }) => isThere(derived.figures.get('steady_temperature')) },
  { id: 'not-steady', title: 'not steady', of: ({ derived }) => isAbsent(derived.figures.get('steady_temperature'), 'not-steady') },
  {
    id: 'too-short',
    title: 'too short to settle',
    of: ({ derived }) => isAbsent(derived.figures.get('steady_temperature'), 'too-short'),
  },
  ...FAILED.map((outcome) => ({
    id: `${outcome.replaceAll(' ', '-')}-when-tried`,
    title: `${outcome} when tried`,
    of: ({ tried }: Told) => tried.includes(outcome),
  })),
];

type Entry = ReturnType<RunFigures['figures']['get']>;

/** The outcomes of a run; a run whose log tells none of them has none. */
export function outcomesOf(run: Told): Choice[] {
  return OUTCOMES.filter(({ of }) => of(run)).map(({ id, title }) => ({ id, title }));
}

/** What came of the setting of a run where its specimen was tried at it; no setting is tried at a clock that nobody states. */
export function triedAtSetting({ attempts }: Pick<SiteContents, 'attempts'>, run: Run): Tried[] {
  const same = [...attempts.values()].filter(
    ({ attempts: tried }) => tried.device === run.device && tried.specimen === run.specimen,
  );
  return same.flatMap(({ ladder }) => atSetting(ladder, run));
}

/** Those of them that say the setting did not hold, each once. */
export function failedAtSetting(parts: Pick<SiteContents, 'attempts'>, run: Run): Tried[] {
  return FAILED.filter((outcome) => triedAtSetting(parts, run).includes(outcome));
}

/** Clocks and offsets that differ by less than this share are one. */
const SAME = 1e-9;

function atSetting({ attempts }: Ladder, { context }: Run): Tried[] {
  const { clock, voltageOffset } = context.setting;
  if (clock === undefined) return [];
  const offset = voltageOffset?.value ?? 0;
  return attempts
    .filter((each) => Math.abs(each.clock - clock.value) <= SAME * clock.value && Math.abs(each.offset - offset) <= SAME)
    .map(({ outcome }) => outcome);
}

/** Whether a figure of that name, of any channel, is above zero. */
function isPositive({ figures }: RunFigures, name: string): boolean {
  return [...figures.values()].some((figure) => figure.name === name && isPresent(figure) && figure.quantity.value > 0);
}

function isThere(figure: Entry): boolean {
  return figure !== undefined && isPresent(figure);
}

function isAbsent(figure: Entry, code: string): boolean {
  return figure !== undefined && !isPresent(figure) && figure.absent === code;
}
