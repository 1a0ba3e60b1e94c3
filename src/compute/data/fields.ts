/** Columns of published tables as fields of a Table Schema (Frictionless, version 1), with what it has no word for under keys of our own. */
import type { InstrumentFacts, RunContext } from '../../figures/context.ts';
import { correctionOf, instrumentOf } from '../../figures/sources.ts';
import type { TableLayout } from '../../figures/table-layout.ts';
import { MISSING_MARKERS } from '../../intake/cells/cells.ts';
import { cleanedNames } from '../../intake/cleaned.ts';
import type { ChannelFacts } from '../steps/runs/run-step.ts';

export type Field = Readonly<Record<string, unknown>> & { readonly name: string; readonly type: string };

export interface TableSchema {
  readonly fields: readonly Field[];
  readonly missingValues: readonly string[];
  readonly primaryKey?: string;
}

/** The schema of a cleaned table. */
export function cleanedSchema(channels: readonly ChannelFacts[], context: RunContext): TableSchema {
  const names = cleanedNames(channels);
  return {
    fields: [
      { name: names.time, type: 'number', title: 'time since the first row', unit: 's', constraints: { required: true } },
      ...channels.map((channel) => channelField(channel, context)),
      { name: names.line, type: 'integer', title: 'line of the log as it came', constraints: { required: true, unique: true } },
    ],
    missingValues: [''],
    primaryKey: names.line,
  };
}

/** `step` is how finely readings are told apart; `correction` is what figures add to them, and the file does not. */
function channelField(channel: ChannelFacts, context: RunContext): Field {
  const { name, quantity, column, unit, originalUnit, at, step, missing, bits } = channel;
  const instrument = instrumentOf(context, channel);
  const correction = correctionOf(context, channel);
  return {
    name,
    type: quantity === 'throttle_flag' ? 'integer' : 'number',
    title: `${name.replaceAll('_', ' ')} (${quantity.replaceAll('_', ' ')}${at === undefined ? '' : `, at the ${at}`})`,
    unit,
    quantity,
    ...(at === undefined ? {} : { at }),
    column,
    columnUnit: originalUnit,
    ...(step === null ? {} : { step }),
    missing,
    ...(bits === undefined ? {} : { bits }),
    ...(instrument === null ? {} : { instrument: instrumentText(instrument, channel) }),
    ...(correction === null ? {} : { correction: correction.text }),
  };
}

function instrumentText({ id, title, accuracy, resolution }: InstrumentFacts, { quantity }: ChannelFacts): object {
  const kind = quantity === 'ambient' && !accuracy.ambient ? 'temperature' : quantity;
  const stated = accuracy[kind];
  const step = resolution[kind];
  return {
    id,
    title,
    ...(stated ? { accuracy: stated.text } : {}),
    ...(step ? { resolution: step.value, resolutionUnit: step.unit } : {}),
  };
}

/** What the columns of a small table are, by the names under which they are read. */
const WORDS: Readonly<Record<string, string>> = {
  ambient: 'ambient at which it passed',
  better: 'which direction is good',
  clock: 'clock that was set',
  contact: 'how long a hand may touch it',
  duration: 'for how long it passed',
  error: 'error of the value, as the table states it',
  emissivity: 'emissivity of the surface',
  emissivity_set: 'emissivity that the camera was set to',
  end: 'when the repeat ended',
  id: 'id of the test or spot',
  material: 'material of the surface',
  note: 'remark',
  outcome: 'what came of the setting',
  part: 'part on which the spot lies',
  reading: 'temperature that was read',
  reflected: 'reflected temperature',
  remedy: 'what would make the reading good',
  repeat: 'number or name of the repeat',
  rows: 'which setting or run the row is of',
  spot: 'name of the spot',
  start: 'when the repeat began',
  test: 'name of the test',
  unit: 'unit of the value',
  value: 'result of the repeat',
  voltage_offset: 'voltage added',
};

/** The schema of a small table as it came. Only the values of scores are plain numbers: other cells may carry a unit or limits. */
export function tableSchema(form: TableLayout): TableSchema {
  const fields = form.columns.map(({ head, name, unit }): Field => {
    const numeric = name === 'value';
    return {
      name: head,
      type: numeric ? 'number' : 'string',
      ...(numeric && form.decimal !== '.' ? { decimalChar: form.decimal } : {}),
      ...(name !== null && WORDS[name] !== undefined ? { title: WORDS[name] } : {}),
      ...(unit === '' ? {} : { unit }),
    };
  });
  return { fields, missingValues: [...MISSING_MARKERS] };
}
