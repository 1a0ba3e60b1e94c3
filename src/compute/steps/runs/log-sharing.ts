/** How a log goes out: as its author says, else so that nothing leaks. */
import { listed } from '../../../figures/in-words.ts';
import type { Unread } from '../../../intake/rows/unread.ts';
import type { Share, Sharing } from '../../../register/register.ts';

/** `redacted`: a second file in its place; `elsewhere`: an address outside. */
export type SharedAs = Share | 'redacted' | 'elsewhere';

/**
 * What the author says stands. Where nothing is said, a log goes out as it came only if the run reads all of it; one that holds
 * anything besides (a column without a channel, lines above the header, words) stays, and its cleaned readings go out. So does one that is
 * too long for a site.
 */
export function sharedAsOf(sharing: Sharing | undefined, unread: Unread, tooLong = false): SharedAs {
  if (sharing?.redacted) return 'redacted';
  if (sharing?.elsewhere !== undefined) return 'elsewhere';
  const share = sharing?.share ?? (unread.columns + unread.lines + unread.cells === 0 ? 'as it came' : 'cleaned only');
  return tooLong && share === 'as it came' ? 'cleaned only' : share;
}

/** What a log holds besides its readings, in words that tell nothing of it: "2 columns that no channel reads"; '' for nothing. */
export function unreadText({ columns, lines, cells }: Unread): string {
  const parts = [
    [columns, 'column that no channel reads', 'columns that no channel reads'],
    [lines, 'line that is not a row of readings', 'lines that are not rows of readings'],
    [cells, 'cell with words in place of a reading', 'cells with words in place of a reading'],
  ] as const;
  const said = parts.filter(([count]) => count > 0).map(([count, one, many]) => `${count} ${count === 1 ? one : many}`);
  return listed(said);
}
