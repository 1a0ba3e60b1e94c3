/** Definitions of the figures of runs alike but for time. */
import { subject } from './subject.ts';

const SOURCE =
  'JCGM 100:2008, 4.2.2 and E.4.3; NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.8 (limits for a standard deviation)';
const ALIKE =
  'Runs are alike when device, setting and all conditions but the ambient are the same; a group is named by its earliest run.';
const LITTLE = 'The interval is wide and lopsided, as a few values say little of a spread.';

const ALL = {
  unit: "the figure's own",
  assumptions: [
    ALIKE,
    LITTLE,
    'Sensors on the die differ from specimen to specimen: between specimens, their disagreement is in it.',
    'The runs may differ in ambient. A rise over ambient follows it little; power follows it by leakage, and so does the clock of a chip that was throttled: their spread holds what the room changed.',
  ],
  source: SOURCE,
};

export const REPEATS = subject('repeats', {
  repeatability: {
    label: 'spread of runs of one specimen',
    spoken: '',
    publishedChecks: ['gum-4-4-3'],
    lists: [],
    ...ALL,
    definition:
      'Standard deviation of a figure over runs of one specimen that are alike but for time; over several specimens, pooled. n is the number of runs. Runs of different days are repeated under intermediate conditions (VIM, 2.22): day, boot and room are in it, which a repeatability in the strict sense (VIM, 2.21) leaves out.',
    formula: String.raw`s_\mathrm{r} = \sqrt{\frac{\sum_j (n_j - 1)\, s_j^2}{\sum_j (n_j - 1)}}`,
    notCovered: ['What all the runs share, such as the error of one meter.', 'Other specimens.'],
    absentWhen: ['no specimen was run twice at this setting and under these conditions'],
    check: 'JCGM 100:2008, 4.4.3: twenty temperatures, s 1.489 °C',
  },
  specimen_spread: {
    label: 'spread between specimens',
    spoken: '',
    publishedChecks: ['gum-4-4-3'],
    lists: [],
    ...ALL,
    definition:
      'Standard deviation of a figure between specimens, less what runs of one specimen explain of it, where one was run twice. n is the number of specimens.',
    formula: String.raw`s_\mathrm{b}^2 = \frac{1}{n - 1} \sum_{j=1}^{n} (\bar x_j - \bar x)^2 - s_\mathrm{r}^2\, \overline{1/n_j}`,
    notCovered: [
      'What all the runs share, such as the error of one meter.',
      'Specimens chosen by hand, or from one batch: they say little of all that are made.',
    ],
    absentWhen: [
      'only one specimen was run at this setting and under these conditions: it is never called typical',
      'the specimens lie no further apart than runs of one specimen explain (then it is below the bound)',
    ],
    check: 'of two values, their difference over √2; with two runs each, by hand',
  },
});
