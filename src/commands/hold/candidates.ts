/** Everything that an address or a simple expression of a note can stand for, with what is needed to rank it. */
import { isPresent } from '../../figures/figure.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import { spelled } from '../../words/expression/address.ts';
import type { Subject } from '../../words/written.ts';

export interface Candidate {
  readonly alias: string;
  readonly subject: Subject;
  /** The expression that an author would write: `fast.score."aes-1t"`. */
  readonly is: string;
  /** Figure's name in the catalogue, or the fact's address. */
  readonly name: string;
  /** Key less the name: channel, phase, test, spot, alias. */
  readonly details: readonly string[];
  readonly quantity: Quantity;
  /** A setting, condition or rating: stated, not measured. */
  readonly fact: boolean;
}

/** All figures that are present and all facts of a note's subjects, in their order. */
export function candidatesOf(subjects: ReadonlyMap<string, Subject>): Candidate[] {
  return [...subjects].flatMap(([alias, subject]) => [
    ...[...subject.figures].flatMap(([key, figure]): Candidate[] =>
      isPresent(figure)
        ? [
            {
              alias,
              subject,
              is: `${alias}.${spelled(key)}`,
              name: figure.name,
              details: detailsOf(key, figure.name),
              quantity: figure.quantity,
              fact: false,
            },
          ]
        : [],
    ),
    ...[...subject.facts].map(([key, quantity]): Candidate => {
      const name = FACTS.find((fact) => key === fact || key.startsWith(`${fact}.`)) ?? key;
      return { alias, subject, is: `${alias}.${spelled(key)}`, name, details: detailsOf(key, name), quantity, fact: true };
    }),
  ]);
}

const FACTS = [
  'setting.clock',
  'setting.voltage_offset',
  'device.throttle_at',
  'device.rated_clock',
  'device.supply',
  'repeats',
  'outcome',
];

function detailsOf(key: string, name: string): string[] {
  return key === name
    ? []
    : key
        .slice(name.length + 1)
        .split('.')
        .map((part) => part.replaceAll('"', ''));
}
