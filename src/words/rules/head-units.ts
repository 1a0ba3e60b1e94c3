/** Units that stand in the head of a table's column: "settled (°C)", "grid, sweeps/s", "power in W". The numbers below borrow them. */
import type { Nodes, Root } from 'mdast';
import { visit } from 'unist-util-visit';
import { spanOf } from '../page/writing.ts';

/** By where a cell begins: the unit of its column. `isUnit` says what is one. */
export function headUnits(source: string, tree: Root, isUnit: (word: string) => boolean): ReadonlyMap<number, string> {
  const units = new Map<number, string>();
  visit(tree, 'table', ({ children: [head, ...rows] }) => {
    const ofColumn = (head?.children ?? []).map((cell) => unitIn(sliceOf(source, cell), isUnit));
    for (const { children } of rows) {
      for (const [column, cell] of children.entries()) {
        const unit = ofColumn[column];
        if (unit !== undefined) units.set(spanOf(cell).start, unit);
      }
    }
  });
  return units;
}

const SAID = [/[([]\s*([^()[\]]+?)\s*[)\]]\s*$/, /[,/]\s+(\S[^,]*)$/, /\bin\s+(\S.*)$/, /^(\S+)$/];

function unitIn(head: string, isUnit: (word: string) => boolean): string | undefined {
  const text = head.replace(/[|*_`]/g, ' ').trim();
  return SAID.map((form) => form.exec(text)?.[1]?.trim()).find((word) => word !== undefined && isUnit(word));
}

function sliceOf(source: string, node: Nodes): string {
  const { start, end } = spanOf(node);
  return source.slice(start, end);
}
