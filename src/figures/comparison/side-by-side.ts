/** Figures of single runs side by side, and how far each lies from the reference's. */
import type { Reason } from '../absent.ts';
import { CATALOGUE } from '../catalogue.ts';
import type { Figure } from '../figure.ts';
import type { ComparedRun, Setting } from './compared.ts';
import { difference } from './differences.ts';
import { type Tested, tested } from './tested.ts';
import { withVerdicts } from './verdicts.ts';

/** Names and, for those of the load phase alone, addresses of the figures that readers set side by side, in the order of the catalogue. */
export const SIDE_BY_SIDE: readonly string[] = CATALOGUE.flatMap(({ name, lists }) => [
  ...(lists.includes('side by side') ? [name] : []),
  ...(lists.includes('side by side, under load') ? [`${name}.load`] : []),
]);

/**
 * Addresses of these figures that any of the runs has, by name and then by first appearance: `peak_temperature`,
 * `peak_temperature.board`. A name that leads to a phase (`energy.load`) stands for itself.
 */
export function sideBySideAddresses(runs: readonly Pick<ComparedRun, 'figures'>[]): string[] {
  return SIDE_BY_SIDE.flatMap((name) => [
    ...new Set(
      runs.flatMap(({ figures }) =>
        [...figures]
          .filter(([address, { of }]) => address === name || address === `${name}.${of?.channel}`)
          .map(([address]) => address),
      ),
    ),
  ]);
}

/**
 * Of each setting, by address: its figure less the reference's, where both are present. What the two share (an instrument's offset, a
 * measured ambient) cancels, since parts are subtracted source by source (JCGM 100:2008, 5.2.2). `of` names the reference and the
 * verdict against zero; all settings are judged together, figure by figure. Of two specimens, where a sensor states no accuracy, the
 * verdict is that it cannot be told.
 */
export function differencesTo(reference: Setting, others: readonly Setting[]): ReadonlyMap<Setting, ReadonlyMap<string, Figure>> {
  const all = others.map((run) => ({
    run,
    found: addressesOf(reference, run).map((address) => differenceAt(reference, run, address)),
  }));
  const byAddress = Map.groupBy(
    all.flatMap(({ found }) => found),
    ({ address }) => address,
  );
  const figures = new Map<Tested, Figure>();
  for (const family of byAddress.values()) {
    for (const [index, { figure }] of withVerdicts(family).entries()) figures.set(family[index]!, figure);
  }
  return new Map(all.map(({ run, found }) => [run, new Map(found.map((each) => [each.address, figures.get(each)!]))]));
}

function addressesOf(reference: Setting, run: Setting): string[] {
  return sideBySideAddresses([reference, run]).filter((address) =>
    [reference, run].every(({ figures }) => 'quantity' in (figures.get(address) ?? {})),
  );
}

/** Of no catalogue name: its definition is that of the figure that it is a difference of. */
function differenceAt(reference: Setting, run: Setting, address: string): Tested {
  const outcome = elsewhere(reference, run, address) ?? difference(run, address, reference, address);
  const question = { neutral: 0, kind: 'apart', between: [run, reference], sensors: true } as const;
  return tested('difference', address, outcome, { run: run.alias, reference: reference.alias }, question);
}

/** Figures of different places are not subtracted: electrical ones by where they were measured, surfaces by spot. */
function elsewhere(reference: Setting, run: Setting, address: string): Reason | null {
  const [base, own] = [reference.figures.get(address), run.figures.get(address)];
  const key = (['at', 'spot'] as const).find((each) => own?.of?.[each] !== base?.of?.[each]);
  if (key === undefined) return null;
  const where = (figure: Figure | undefined) =>
    String(figure?.of?.[`${key}_title`] ?? figure?.of?.[key] ?? 'a place that is not stated');
  return {
    absent: 'different-places',
    why: `Not subtracted: ${where(own)} in ${run.alias}, ${where(base)} in ${reference.alias}.`,
  };
}
