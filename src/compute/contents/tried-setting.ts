/** What came of a run's setting where it was tried on the run's specimen. */
import { type Ladder, OUTCOMES, type Outcome } from '../../figures/stability/ladder.ts';
import type { Run } from '../../register/register.ts';
import type { SiteContents } from './site-contents.ts';

/** What a soak itself does not tell: the others it says in its own figures. */
export const FAILED = OUTCOMES.filter((outcome) => outcome !== 'passed' && outcome !== 'throttled');

/** What came of the setting of a run where its specimen was tried at it; no setting is tried at a clock that nobody states. */
export function triedAtSetting({ attempts }: Pick<SiteContents, 'attempts'>, run: Run): Outcome[] {
  const same = [...attempts.values()].filter(
    ({ attempts: tried }) => tried.device === run.device && tried.specimen === run.specimen,
  );
  return same.flatMap(({ ladder }) => atSetting(ladder, run));
}

/** Those of them that say the setting did not hold, each once. */
export function failedAtSetting(parts: Pick<SiteContents, 'attempts'>, run: Run): Outcome[] {
  return FAILED.filter((outcome) => triedAtSetting(parts, run).includes(outcome));
}

/** Clocks and offsets that differ by less than this share are one. */
const SAME = 1e-9;

function atSetting({ attempts }: Ladder, { context }: Run): Outcome[] {
  const { clock, voltageOffset } = context.setting;
  if (clock === undefined) return [];
  const offset = voltageOffset?.value ?? 0;
  return attempts
    .filter((each) => Math.abs(each.clock - clock.value) <= SAME * clock.value && Math.abs(each.offset - offset) <= SAME)
    .map(({ outcome }) => outcome);
}
