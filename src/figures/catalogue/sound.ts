/** Definitions of the figures of fans and sound. */
import { MEAN } from './proofs.ts';
import { subject } from './subject.ts';

const PRACTICE = 'common practice, no source';
const NO_FAN = 'there is no fan channel';
const NO_LEVEL = 'there is no sound level channel';
const NO_LOAD = 'there is no load phase';
const PLACE =
  'A level holds for the place of the microphone, its distance and the room. The weighting is the one that the unit states (dB(A)).';

export const SOUND = subject('sound', {
  fan_speed: {
    label: 'fan speed',
    unit: "the channel's own",
    spoken: 'fan spins spun spinning turns revolutions rpm',
    publishedChecks: MEAN,
    lists: [],
    uncounted: 'It is a mean like that of a clock, which is simulated.',
    definition:
      'Mean of the readings of a fan under load, each weighted by the time that it stands for: its speed, or the share of its drive.',
    formula: String.raw`\bar n = \frac{\sum_i w_i n_i}{\sum_i w_i}`,
    notCovered: [
      'A drive in per cent is not a speed: what the fan made of it is not known.',
      'How true the sensor of the fan is, unless its instrument states it.',
    ],
    assumptions: ['A fan that stands still counts with zero.', 'A drive in per cent is what the fan was told, not its speed.'],
    absentWhen: [NO_LOAD, 'it holds fewer than two readings'],
    source: PRACTICE,
    check: 'hand-computed means',
  },
  peak_fan_speed: {
    label: 'peak fan speed',
    unit: "the channel's own",
    spoken: 'fan highest fastest peak most revolutions rpm',
    publishedChecks: [],
    lists: [],
    uncounted: 'It is an extreme like that of a temperature, which is simulated.',
    definition: 'Largest reading of a fan under load. Its interval is lopsided, as that of a peak temperature.',
    formula: String.raw`\hat n = \max_{i \in \mathrm{load}} n_i`,
    notCovered: ['Bursts between two readings.'],
    assumptions: ['Between two readings the speed never changed faster than it was seen to change.'],
    absentWhen: [NO_FAN, NO_LOAD],
    source: PRACTICE,
    check: 'hand-picked rows',
  },
  sound_level: {
    label: 'sound level',
    unit: 'dB',
    spoken: 'loud louder noise noisy sound quiet silent hum decibel',
    publishedChecks: ['sound-levels'],
    lists: [],
    uncounted: 'It is a mean of energies, which is simulated as that of a power is.',
    definition:
      'Level of the mean sound energy under load, each reading weighted by the time that it stands for. Levels average by energy: the mean of the levels themselves would be too low, by more the more they swing.',
    formula: String.raw`L = 10 \lg \frac{\sum_i w_i\, 10^{L_i / 10}}{\sum_i w_i}\ \mathrm{dB}`,
    notCovered: [
      'Other places of the microphone, other distances and other rooms; the noise of the room itself is in it (`device_sound_level` takes it off).',
      'Tones and roughness: two sounds of one level may disturb unlike.',
    ],
    assumptions: [PLACE, 'Readings of a slow time weighting follow each other, which counts in the interval.'],
    absentWhen: [NO_LEVEL, NO_LOAD, 'it holds fewer than two readings'],
    source: 'ISO 1996-1, equivalent continuous sound pressure level (from memory)',
    check: 'closed form: half of the time at 40 dB and half at 50 dB make 47.4 dB',
  },
  device_sound_level: {
    label: 'sound level without the room',
    unit: 'dB',
    spoken: 'loud louder noise noisy sound quiet silent device decibel',
    publishedChecks: ['sound-levels'],
    lists: [],
    uncounted: 'It is the sound level and a stated number in a formula, both of which have their intervals.',
    definition:
      'Sound level under load less the sound energy of the room, which was measured at the same place with the device off. From 10 dB above the room on, that is less than half a decibel. A level less than 6 dB above the room is no more than a bound.',
    formula: String.raw`L' = L - K,\quad K = -10 \lg\left(1 - 10^{-(L - L_\mathrm{room}) / 10}\right)\ \mathrm{dB}`,
    notCovered: [
      'Other places of the microphone and other distances: it holds for the one that the run states.',
      'What walls and the bench reflect: a sound power needs a surface of microphones around the device.',
      'A room that was louder or quieter during the test than when it was measured alone.',
    ],
    assumptions: ['The sound of the room and that of the device add by energy.', PLACE],
    absentWhen: [
      NO_LEVEL,
      NO_LOAD,
      'the run states no `background_sound` in dB, or no `microphone_distance`',
      'the level is less than 6 dB above that of the room: it is then a bound',
    ],
    source: 'ISO 3744, correction for background noise (from memory; the standard itself was not read)',
    check: 'closed form: 43 dB in a room of 40 dB are two equal energies; 10 dB above the room take off 0.458 dB',
  },
  highest_sound_level: {
    label: 'highest sound level',
    unit: 'dB',
    spoken: 'loud loudest noise sound peak decibel',
    publishedChecks: [],
    lists: [],
    uncounted: 'It is an extreme like that of a temperature, which is simulated.',
    definition: 'Largest sound level under load as it was logged. Its interval is lopsided, as that of a peak temperature.',
    formula: String.raw`\hat L = \max_{i \in \mathrm{load}} L_i`,
    notCovered: [
      'Sounds shorter than the time weighting of the meter.',
      'Other places of the microphone, other distances and other rooms.',
    ],
    assumptions: [PLACE, 'What was louder for less than the time weighting of the meter is averaged by it.'],
    absentWhen: [NO_LEVEL, NO_LOAD],
    source: PRACTICE,
    check: 'hand-picked rows',
  },
});
