/** Settles the unit of one channel from what is declared and what the file says, or reports why it cannot. */
import { error, type Problem, warning } from '../../problem.ts';
import { nearestUnit, type Unit, unitsOf } from '../../quantities/units.ts';
import { bracketText } from '../cells/header-units.ts';
import type { ChannelDeclaration, Inference } from '../log.ts';
import {
  canonicalUnits,
  type FoundUnit,
  fitsQuantity,
  readSpelling,
  sameUnit,
  type UnitEvidence,
  unitsInFile,
} from './column-units.ts';

export interface Settled {
  readonly unit: Unit | null;
  readonly original: string;
  readonly problems: readonly Problem[];
  readonly inferences: readonly Inference[];
}

/** The unit of a channel; null with a problem where it is unknown, impossible, contradictory or stated nowhere. */
export function settleUnit(channel: ChannelDeclaration, evidence: UnitEvidence): Settled {
  const inFile = unitsInFile(evidence);
  const refused = inFile.filter((found) => !fitsQuantity(found.unit, channel.quantity));
  const usable = inFile.filter((found) => fitsQuantity(found.unit, channel.quantity));
  if (channel.unit !== undefined) return declared(channel, channel.unit, inFile);
  if (refused.length > 0) return nothing([impossible(channel, refused[0]!.spelling, refused[0]!.how)]);
  const [best, ...others] = usable;
  if (!best) return nothing([nowhere(channel, evidence)]);
  const other = others.find((found) => found.origin !== 'name' && !sameUnit(found.unit, best.unit));
  if (other) return nothing([disagreement(channel, best, other)]);
  return {
    unit: best.unit,
    original: best.spelling,
    problems: [],
    inferences: [
      {
        method: `unit-from-${best.origin}`,
        statement: `The unit of \`${evidence.name}\` (${channel.name}), ${best.spelling}, stands ${best.how}.`,
      },
    ],
  };
}

function nothing(problems: Problem[]): Settled {
  return { unit: null, original: '', problems, inferences: [] };
}

function declared(channel: ChannelDeclaration, text: string, inFile: readonly FoundUnit[]): Settled {
  const unit = readSpelling(text, channel.quantity);
  if (!unit) return nothing([unknown(channel, text)]);
  if (!fitsQuantity(unit, channel.quantity)) return nothing([impossible(channel, text, 'as declared')]);
  const others = inFile.filter((found) => !sameUnit(found.unit, unit));
  const other = others.find((found) => found.origin !== 'name');
  if (!other) return { unit, original: text, problems: others.map((found) => unlike(channel, text, found)), inferences: [] };
  const found = `the channel ${channel.name} is declared in ${text}, but ${other.spelling} stands ${other.how}`;
  if (channel.unitReason === undefined) {
    const remedy = 'leave `unit` out, or add `unit_reason` that says why the file is wrong';
    return nothing([
      error('unit-conflict', channel.place, found, { expected: `the unit that the file states: ${other.spelling}`, remedy }),
    ]);
  }
  const problem = warning('unit-conflict', channel.place, `${found}; ${text} is used (${channel.unitReason})`);
  const statement = `The unit of ${channel.name} is ${text} as declared, not ${other.spelling} as ${other.how}: ${channel.unitReason}.`;
  return { unit, original: text, problems: [problem], inferences: [{ method: 'unit-declared-against-file', statement }] };
}

/** What merely looks like a unit in a name does not stand against the author's word. */
function unlike(channel: ChannelDeclaration, text: string, found: FoundUnit): Problem {
  const sentence = `the channel ${channel.name} is declared in ${text}, though ${found.spelling} stands ${found.how}`;
  return warning('unit-conflict', channel.place, sentence, { remedy: 'see which is right; the declared unit is used' });
}

function unknown(channel: ChannelDeclaration, text: string): Problem {
  const nearest = nearestUnit(text);
  return error('unit-unknown', channel.place, `the channel ${channel.name} has the unknown unit \`${text}\``, {
    expected: `a unit of ${channel.quantity}${exampleUnits(channel)}`,
    ...(nearest === undefined ? {} : { remedy: `did you mean \`${nearest}\`?` }),
  });
}

function impossible(channel: ChannelDeclaration, text: string, how: string): Problem {
  return error(
    'unit-impossible',
    channel.place,
    `the channel ${channel.name} is a ${channel.quantity}, which cannot be in ${text} (${how})`,
    {
      expected: `a unit of ${channel.quantity}${exampleUnits(channel)}`,
      remedy: 'correct the quantity or the column; if the header itself is wrong, declare `unit` with a `unit_reason`',
    },
  );
}

function disagreement(channel: ChannelDeclaration, a: FoundUnit, b: FoundUnit): Problem {
  return error(
    'unit-conflict',
    channel.place,
    `two units stand for the channel ${channel.name}: ${a.spelling} ${a.how}, ${b.spelling} ${b.how}`,
    {
      expected: 'one unit',
      remedy: 'declare `unit` with a `unit_reason` that says which is right',
    },
  );
}

function nowhere(channel: ChannelDeclaration, evidence: UnitEvidence): Problem {
  const text = bracketText(evidence.name);
  const nearest = text === undefined ? undefined : nearestUnit(text);
  const hint = nearest === undefined ? '' : ` (\`${text}\` in the header is not a unit that is known; is it ${nearest}?)`;
  const example = unitsOf(canonicalUnits(channel.quantity)[0] ?? '1')[0] ?? '1';
  return error(
    'unit-missing',
    channel.place,
    `no unit is stated for the channel ${channel.name}: not in the column \`${evidence.name}\`, not in its cells${hint}`,
    {
      expected: `a unit of ${channel.quantity}${exampleUnits(channel)}`,
      remedy: `add for instance \`unit: ${example}\` below \`${channel.name}:\`, if that is what the instrument writes`,
    },
  );
}

function exampleUnits(channel: ChannelDeclaration): string {
  const spellings = canonicalUnits(channel.quantity).flatMap((canonical) => unitsOf(canonical));
  return spellings.length > 0 ? `: ${spellings.join(', ')}` : '';
}
