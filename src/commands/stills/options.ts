/** What `npm run stills` is asked for. */
import { parseArgs } from 'node:util';
import { LOOKS, type Look } from '../../plots/stills/looks.ts';
import { WIDTHS } from './write-pictures.ts';

export interface StillsOptions {
  /** As typed. */
  readonly file: string;
  readonly looks: readonly Look[];
  /** Of PNG, px; none for SVG alone. */
  readonly widths: readonly number[];
}

/** Reads the arguments; a text says what is wrong with them. */
export function readOptions(args: readonly string[]): StillsOptions | string {
  const options = { look: { type: 'string' }, width: { type: 'string' } } as const;
  const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
  const looks = LOOKS.filter(({ name }) => values.look === undefined || values.look === name);
  if (looks.length === 0) return `--look ${values.look}: it is one of ${LOOKS.map(({ name }) => name).join(', ')}`;
  const widths = WIDTHS.filter((width) => values.width === undefined || values.width === String(width));
  if (widths.length === 0 && values.width !== '0') return `--width ${values.width}: it is one of ${[...WIDTHS, 0].join(', ')}`;
  return { file: positionals[0] ?? '', looks, widths };
}
