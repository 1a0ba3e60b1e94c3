/** Which figures are no longer as a record copy has them: was, is, and by how many of its standard uncertainties. */
import { CATALOGUE } from '../../figures/catalogue.ts';
import { type Figure, type FigureMap, isPresent, type PresentFigure } from '../../figures/figure.ts';
import { compareText } from '../../problem.ts';
import { printQuantity } from '../../quantities/print.ts';
import { standardUncertainty } from '../../quantities/uncertainty.ts';
import { shownFigure } from '../contents/figure-text.ts';
import type { ChangedFigures } from '../models/record-copies.ts';

type Figures = FigureMap;
type Row = ChangedFigures['rows'][number];

/** Rounding in the last bits is no change. */
const SAME = 1e-9;

/** Compares the figures that a copy holds with those of now, in the catalogue's order. */
export function changedFigures(of: string, then: Figures, now: Figures): ChangedFigures {
  const addresses = [...new Set([...then.keys(), ...now.keys()])].sort(inOrder);
  const rows: Row[] = [];
  let finer = 0;
  for (const address of addresses) {
    const [was, is] = [then.get(address), now.get(address)];
    const row = rowOf(address, was, is);
    if (row.was !== row.is) rows.push(row);
    else if (moved(was, is)) finer++;
  }
  return { of, rows, finer };
}

function inOrder(a: string, b: string): number {
  return placeOf(a) - placeOf(b) || compareText(a, b);
}

/** Of a figure's name in the catalogue; one that it no longer has comes last. */
function placeOf(address: string): number {
  const name = address.split('.', 1)[0];
  const index = CATALOGUE.findIndex((definition) => definition.name === name);
  return index < 0 ? CATALOGUE.length : index;
}

function rowOf(address: string, was: Figure | undefined, is: Figure | undefined): Row {
  const figure = (is ?? was)!;
  const { label, detail } = shownFigure(address, figure);
  // Of a comparison: which run is compared.
  const told = [String(figure.of?.run ?? ''), detail].filter((text) => text !== '').join(', ');
  return { address, label, detail: told, was: textOf(address, was), is: textOf(address, is), by: byHowMuch(was, is) };
}

/** As pages print it: value and uncertainty, or why there is none. */
function textOf(address: string, figure: Figure | undefined): string {
  if (figure === undefined) return 'none';
  const { shown, uncertainty, absent } = shownFigure(address, figure);
  return absent === undefined ? [shown, uncertainty].filter((text) => text !== '').join(', ') : `absent: ${absent}`;
}

function moved(was: Figure | undefined, is: Figure | undefined): boolean {
  if (was === undefined || is === undefined || !isPresent(was) || !isPresent(is)) return false;
  const [before, now] = [was.quantity, is.quantity];
  return !close(before.value, now.value) || !close(standardUncertainty(before) ?? 0, standardUncertainty(now) ?? 0);
}

function close(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b));
}

function byHowMuch(was: Figure | undefined, is: Figure | undefined): string {
  if (was === undefined || is === undefined || !isPresent(was) || !isPresent(is)) return '';
  if (was.quantity.unit !== is.quantity.unit || close(was.quantity.value, is.quantity.value)) return '';
  return difference(was, is);
}

/** "by +1.2 K, 2.4 of its standard uncertainties", those of what it is now. */
function difference({ quantity: before }: PresentFigure, { quantity: now }: PresentFigure): string {
  const value = now.value - before.value;
  const unit = now.unit === '°C' ? 'K' : now.unit;
  const by = `by ${value > 0 ? '+' : ''}${printQuantity({ value, unit, parts: null }).text}`;
  const u = standardUncertainty(now);
  if (u === null || u === 0) return by;
  return `${by}, ${Number((Math.abs(value) / u).toPrecision(2))} of its standard uncertainties`;
}
