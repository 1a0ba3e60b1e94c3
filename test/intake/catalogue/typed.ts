/** What a tester declares of a log: what `npm run add` proposes and is complete, and the lines that he types himself. */
import type { Inspection } from '../../../src/intake/inspect.ts';
import type { ChannelDeclaration, LogDeclaration, QuantityKind } from '../../../src/intake/log.ts';
import { columnRange } from '../../../src/register/values/column-range.ts';
import { RUN } from '../declare.ts';

/** Lines as they stand in a run's file; a range of columns has one for all of its channels. */
export interface Typed {
  readonly time?: Readonly<Record<string, string>>;
  readonly rows?: Readonly<Record<string, string>>;
  readonly channels?: Readonly<Record<string, string | Readonly<Record<string, string>>>>;
}

/** How many lines the tester types: one for each value. */
export function typedLines(typed: unknown): number {
  if (typeof typed === 'string') return 1;
  return Object.values(typed as object).reduce((sum: number, value) => sum + typedLines(value), 0);
}

type Stated = Readonly<Record<string, string>>;

/** Channels by column, with ranges spread out. */
function channelsOf(typed: Typed): Map<string, Stated> {
  const channels = new Map<string, Stated>();
  for (const [key, value] of Object.entries(typed.channels ?? {})) {
    if (typeof value !== 'string') channels.set(key, value);
    else {
      const [quantity = '', unit = ''] = value.split(', ');
      for (const column of columnRange(key) ?? []) channels.set(column, { quantity, unit });
    }
  }
  return channels;
}

function timeOf(inspection: Inspection, typed: Typed): LogDeclaration['time'] {
  const { every, date_order, ...rest } = typed.time ?? {};
  const column = inspection.time && !inspection.time.certain && !every ? { column: inspection.time.column } : {};
  return {
    ...(typed.time ? column : {}),
    ...rest,
    ...(every === undefined ? {} : { every: Number.parseFloat(every) }),
    ...(date_order === undefined ? {} : { order: date_order === 'day first' ? 'dmy' : 'mdy' }),
  } as LogDeclaration['time'];
}

/** The declaration of a log: proposals with a unit, overlaid by what is typed. */
export function declarationOf(inspection: Inspection, typed: Typed): LogDeclaration {
  const own = channelsOf(typed);
  const channels = inspection.columns.flatMap(({ column, quantity, unit }, k): ChannelDeclaration[] => {
    const stated = own.get(column);
    if (unit === undefined && quantity !== 'throttle_flag' && stated === undefined) return [];
    return [
      {
        name: `channel_${k}`,
        quantity: (stated?.quantity as QuantityKind | undefined) ?? quantity,
        column,
        place: RUN,
        ...(stated?.unit === undefined ? {} : { unit: stated.unit }),
        ...(stated?.missing === undefined ? {} : { missing: [stated.missing] }),
      },
    ];
  });
  const [rows] = Object.entries(typed.rows ?? {});
  return {
    file: 'a.csv',
    channels,
    repairs: [],
    place: RUN,
    ...(typed.time ? { time: timeOf(inspection, typed)! } : {}),
    ...(rows ? { rows: { column: rows[0], value: rows[1], place: RUN } } : {}),
  };
}
