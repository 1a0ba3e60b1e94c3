/** How high a drawing will be, before it is drawn: its place is kept free, so that nothing below moves when it comes. */
import { NARROW, type PageSize, WIDE } from '../../plots/drawing/size.ts';
import type { ShownQuantity } from './view.ts';

/** Above each panel, and above and below them all, px: of one row of phase names, as most runs have. */
const ROOM: Readonly<Record<PageSize['name'], { readonly panel: number; readonly whole: number }>> = {
  wide: { panel: 39, whole: 55 },
  narrow: { panel: 37, whole: 48 },
};
/** As the trace lays out a flag. */
const FLAG_HEIGHT = 40;

/** px, of panels one below the other in a column of that width. */
export function heightOf(show: readonly Pick<ShownQuantity, 'quantity'>[], column: number): number {
  const size = column < WIDE.width ? NARROW : WIDE;
  const { panel, whole } = ROOM[size.name];
  const plain = show.length > 1 ? size.stackedHeight : size.height;
  const panels = show.map(({ quantity }) => panel + (quantity === 'throttle_flag' ? FLAG_HEIGHT : plain));
  return Math.round((whole + panels.reduce((sum, height) => sum + height, 0)) * Math.min(1, column / size.width));
}
