/** The drawn readings of a chart, from its CSV. */

/** A line with its readings in the order of time, as texts of the file. */
export interface ReadLine {
  readonly run: string;
  readonly channel: string;
  readonly unit: string;
  readonly times: readonly number[];
  readonly values: readonly string[];
}

export type Lines = readonly ReadLine[];

/** Null where the file cannot be had. */
export async function readLines(address: string): Promise<Lines | null> {
  const answer = await fetch(address).catch(() => null);
  return answer?.ok ? linesOf(await answer.text()) : null;
}

/** Lines of readings, in the order of the file: means over them are left out. Fields may stand in quotes (RFC 4180). */
export function linesOf(csv: string): Lines {
  const found = new Map<string, ReadLine & { times: number[]; values: string[] }>();
  for (const record of csv.split('\r\n').slice(1)) {
    const fields = fieldsOf(record);
    const [run = '', channel = '', time = '', value = '', unit = '', drawnAs] = fields;
    if (drawnAs !== 'reading') continue;
    const key = JSON.stringify([run, channel]);
    const line = found.get(key) ?? { run, channel, unit, times: [], values: [] };
    line.times.push(Number(time));
    line.values.push(value);
    found.set(key, line);
  }
  return [...found.values()];
}

function fieldsOf(record: string): string[] {
  return [...record.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? '',
  );
}
