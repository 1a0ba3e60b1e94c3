/** The directives that are ours: how each is written, and which attributes it takes. */

/** `:name[…]` within a sentence, `::name{…}` alone on a line, `:::name{…}` … `:::` around a stretch. */
export type DirectiveForm = 'text' | 'leaf' | 'container';

interface Listed {
  readonly name: string;
  readonly form: DirectiveForm;
  /** Whether words in brackets belong to it. */
  readonly label: boolean;
  /** What it does, for the reference. */
  readonly about: string;
  /** What each attribute says, by its name. */
  readonly says: Readonly<Record<string, string>>;
  readonly required: readonly string[];
  /** One right example, for the "expected" of a problem. */
  readonly example: string;
}

const LIST: readonly Listed[] = [
  {
    name: 'value',
    form: 'text',
    label: true,
    about: 'prints the figure or expression in its brackets, with its unit, rounded by its uncertainty',
    says: {
      unit: 'the unit in which it is printed',
      to: 'the step to which it is rounded, such as `0.1 GHz`; a finer step than the data bears is an error',
    },
    required: [],
    example: ':value[fast.peak_temperature]',
  },
  {
    name: 'stated',
    form: 'text',
    label: true,
    about: 'keeps your words, which state a number; an error when the data no longer says so',
    says: { is: 'the expression that the words state', unit: 'the unit of a number that shares it with others of its list' },
    required: ['is'],
    example: ':stated[about 71 degrees]{is="fast.peak_temperature"}',
  },
  {
    name: 'unheld',
    form: 'text',
    label: true,
    about: 'leaves a number free that no data is to hold: a price, a name, a common fact',
    says: {},
    required: [],
    example: ':unheld[5 V]',
  },
  {
    name: 'claim',
    form: 'text',
    label: true,
    about: 'keeps your words; the condition must hold on the 95 % interval',
    says: {
      is: 'the condition',
      outcome: 'another outcome that may stand: `untold` for words that say the data cannot tell, or `holds or untold`',
    },
    required: ['is'],
    example: ':claim[runs hotter]{is="fast.peak_temperature > rated.peak_temperature"}',
  },
  {
    name: 'plot',
    form: 'leaf',
    label: false,
    about: 'draws a chart',
    says: {
      kind: 'which chart',
      runs: 'the names of the runs, with blanks between; all runs of the note where it is left out',
      channels: 'the names of the channels; the primary temperature where it is left out',
      of: 'of `against`: the two figures, the upright one first',
      rise: '`true` draws temperatures as rise over ambient',
      attempts: 'of `stability`: the names of the attempts',
      comparison: 'of charts of a comparison: its name',
      title: 'a title of your own',
      id: 'the name in its address; else made from what it draws',
    },
    required: ['kind'],
    example: '::plot{kind=trace runs="rated fast"}',
  },
  {
    name: 'table',
    form: 'leaf',
    label: false,
    about: 'prints a table of figures, with a column for each run',
    says: {
      runs: 'the names of the runs, with blanks between; all runs of the note where it is left out',
      of: 'the figures, with blanks between',
      title: 'a caption of your own',
      id: 'the name in its address; else made from what it shows',
    },
    required: ['of'],
    example: '::table{runs="rated fast" of="peak_temperature"}',
  },
  {
    name: 'cue',
    form: 'container',
    label: false,
    about: 'says in a script what is on screen, up to the line `:::`',
    says: {
      at: 'the time at which it begins; the page finds it where it is left out',
      shows: 'plots of the script or of its note, by their ids or by the beginning of one, with blanks between',
    },
    required: [],
    example: ':::cue{at="3:15" shows="trace"}',
  },
];

export interface DirectiveName extends Listed {
  readonly attributes: readonly string[];
}

export const DIRECTIVES: ReadonlyMap<string, DirectiveName> = new Map(
  LIST.map((entry) => [entry.name, { ...entry, attributes: Object.keys(entry.says) }]),
);

/** Colons that open a form. */
export const COLONS: Readonly<Record<DirectiveForm, string>> = { text: ':', leaf: '::', container: ':::' };

/** The names as an author writes them, for messages. */
export function namesInWords(): string {
  const names = LIST.map((entry) => `\`${COLONS[entry.form]}${entry.name}\``);
  return `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}
