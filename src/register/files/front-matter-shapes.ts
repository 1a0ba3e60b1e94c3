/** The shapes of all front matter, by folder of content/: for the reference, and for whatever else tells an author which keys there are. */
import { ATTEMPTS } from './attempts.ts';
import { COMPARISON } from './comparisons.ts';
import { DEVICE } from './devices.ts';
import type { Folder } from './folders.ts';
import { INSTRUMENT } from './instruments.ts';
import { NOTE, SCRIPT } from './notes.ts';
import { QUOTED } from './quoted.ts';
import { RUN } from './runs.ts';
import { SETUP } from './setups.ts';

export const FRONT_MATTER = {
  devices: DEVICE,
  instruments: INSTRUMENT,
  setups: SETUP,
  runs: RUN,
  attempts: ATTEMPTS,
  comparisons: COMPARISON,
  quoted: QUOTED,
  notes: NOTE,
  scripts: SCRIPT,
} satisfies Readonly<Record<Folder, object>>;
