/** The directives that are ours: how each is written, and which attributes it takes. */

/** `:name[…]` within a sentence, `::name{…}` alone on a line, `:::name{…}` … `:::` around a stretch. */
export type DirectiveForm = 'text' | 'leaf' | 'container';

export interface DirectiveName {
  readonly name: string;
  readonly form: DirectiveForm;
  /** Whether words in brackets belong to it. */
  readonly label: boolean;
  readonly attributes: readonly string[];
  readonly required: readonly string[];
  /** One right example, for the "expected" of a problem. */
  readonly example: string;
}

const LIST: readonly DirectiveName[] = [
  { name: 'value', form: 'text', label: true, attributes: ['unit', 'to'], required: [], example: ':value[fast.peak_temperature]' },
  {
    name: 'stated',
    form: 'text',
    label: true,
    attributes: ['is', 'unit'],
    required: ['is'],
    example: ':stated[about 71 degrees]{is="fast.peak_temperature"}',
  },
  { name: 'unheld', form: 'text', label: true, attributes: [], required: [], example: ':unheld[5 V]' },
  {
    name: 'claim',
    form: 'text',
    label: true,
    attributes: ['is', 'outcome'],
    required: ['is'],
    example: ':claim[runs cooler]{is="fast.peak_temperature < rated.peak_temperature"}',
  },
  {
    name: 'plot',
    form: 'leaf',
    label: false,
    attributes: ['kind', 'runs', 'channels', 'of', 'rise', 'attempts', 'comparison', 'title', 'id'],
    required: ['kind'],
    example: '::plot{kind=trace runs="rated fast"}',
  },
  {
    name: 'table',
    form: 'leaf',
    label: false,
    attributes: ['runs', 'of', 'title', 'id'],
    required: ['of'],
    example: '::table{runs="rated fast" of="peak_temperature"}',
  },
  {
    name: 'cue',
    form: 'container',
    label: false,
    attributes: ['at', 'shows'],
    required: [],
    example: ':::cue{at="3:15" shows="trace"}',
  },
];

export const DIRECTIVES: ReadonlyMap<string, DirectiveName> = new Map(LIST.map((entry) => [entry.name, entry]));

/** Colons that open a form. */
export const COLONS: Readonly<Record<DirectiveForm, string>> = { text: ':', leaf: '::', container: ':::' };

/** The names as an author writes them, for messages. */
export function namesInWords(): string {
  const names = LIST.map((entry) => `\`${COLONS[entry.form]}${entry.name}\``);
  return `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}
