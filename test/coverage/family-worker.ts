/** A thread of the families' tables: counts one cell for each message. */
import { parentPort } from 'node:worker_threads';
import { countCell } from './count-cell.ts';
import type { CellTask } from './family-table.ts';
import { familyOf } from './find-families.ts';

parentPort!.on('message', async ({ family, cell, trials }: CellTask) => {
  const { cells } = await familyOf(family);
  parentPort!.postMessage(countCell(family, cells[cell]!, trials));
});
