/** Declarations and fixtures for the tests of intake. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ChannelDeclaration, LogDeclaration, QuantityKind } from '../../src/intake/log.ts';
import { type ReadLog, read } from '../../src/intake/read.ts';

export const RUN = { file: 'content/runs/a.md', line: 5, column: 3 };

export function channel(
  name: string,
  quantity: QuantityKind,
  column: string,
  more: Partial<ChannelDeclaration> = {},
): ChannelDeclaration {
  return { name, quantity, column, place: RUN, ...more };
}

export function declare(channels: readonly ChannelDeclaration[], more: Partial<LogDeclaration> = {}): LogDeclaration {
  return { file: 'a.csv', channels, repairs: [], place: RUN, ...more };
}

export function fixture(name: string): Uint8Array {
  return readFileSync(join(import.meta.dirname, '..', 'fixtures', 'intake', name));
}

export function bytes(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** Reads a fixture with its path as the declared file. */
export function readFixture(name: string, channels: readonly ChannelDeclaration[], more: Partial<LogDeclaration> = {}): ReadLog {
  return read(fixture(name), declare(channels, { file: name, ...more }), `data/${name}`);
}

/** Problems as `line:column severity rule`. */
export function brief({ problems }: Pick<ReadLog, 'problems'>): string[] {
  return problems.map(({ place, severity, rule }) => `${place.file}:${place.line}:${place.column} ${severity} ${rule}`);
}
