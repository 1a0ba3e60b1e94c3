/** One held number as a picture: as large as fits, its unit smaller, below it how sure it is and what it is of. */
import { textWidth, wrap } from '../drawing/text-width.ts';
import { INNER_WIDTH, TEXT_SIZE } from './format.ts';
import { across, drawing, text } from './lines-of-text.ts';

export interface HeldNumber {
  /** As it prints: "58.3 °C". */
  readonly shown: string;
  /** "± 1.2 °C (95 %)"; '' for an exact one. */
  readonly uncertainty: string;
  /** What it is of: "Larch 2 at 2.4 GHz"; '' where its title says it. */
  readonly of: string;
}

const LARGEST = 132;
/** Size of a unit beside its number, and the blank between the two, as shares of the number's size. */
const UNIT = 0.42;
const BLANK = 0.14;
/** Capitals of the type are two thirds of its size high. */
const CAPITAL = 0.66;
const LINE = 24;

/** The body of the card; what the number is stands as the picture's title. */
export function numberCard({ shown, uncertainty, of }: HeldNumber): string {
  const [number, unit] = parted(shown);
  const widthAt = (size: number) =>
    textWidth(number, size, 'semibold') + (unit === '' ? 0 : BLANK * size + textWidth(unit, UNIT * size));
  const size = Math.floor(Math.min(LARGEST, (LARGEST * INNER_WIDTH) / widthAt(LARGEST)));
  const base = CAPITAL * size + 4;
  const rows = [uncertainty, of].filter((row) => row !== '').flatMap((row) => wrap(row, TEXT_SIZE, INNER_WIDTH));
  const first = base + 22;
  return drawing(INNER_WIDTH, first + rows.length * LINE + 8, [
    text(number, 0, base, { size, weight: 600, fill: 'var(--plot-ink)' }),
    ...(unit === ''
      ? []
      : [
          text(unit, textWidth(number, size, 'semibold') + BLANK * size, base, {
            size: UNIT * size,
            weight: 400,
            fill: 'var(--plot-ink)',
          }),
        ]),
    across(0, widthAt(size), first - 4, 'var(--plot-soft)', 1.5),
    ...rows.map((row, i) => text(row, 0, first + (i + 0.8) * LINE, { size: TEXT_SIZE, weight: 400, fill: 'var(--plot-soft)' })),
  ]);
}

/** Number and unit apart; a sign without a blank stays with its number. */
function parted(shown: string): [number: string, unit: string] {
  const [, number, unit] = /^(.*\d\S*)[ \u00a0](\D+)$/.exec(shown) ?? [];
  return number === undefined || unit === undefined ? [shown, ''] : [number, unit];
}
