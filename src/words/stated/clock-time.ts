/** Times with colons: `2:30 min`, `1:20 h`, `1:20:05`. */
import type { Amount, SaidNumber, UnitSaid } from './phrase.ts';
import { type Unread, unread } from './stated-number.ts';
import type { Token } from './tokens.ts';
import { unitAt } from './unit-said.ts';

const BELOW = { min: { symbol: 's', name: 'seconds' }, h: { symbol: 'min', name: 'minutes' } } as const;

/**
 * `2:30 min` is 2 minutes and 30 seconds, `1:20 h` 1 hour and 20 minutes, `1:20:05` (with or without `h`) hours, minutes and seconds.
 * Two numbers without a unit are Unread: they may be a time of day, minutes or hours.
 */
export function clockAt(tokens: readonly Token[], at: number): { side: SaidNumber; next: number } | Unread {
  const token = tokens[at] as Token;
  const parts = token.text.split(':').map(Number);
  const found = unitAt(tokens, at + 1, 'digits');
  const over = found?.unit.spelling;
  const three = parts.length === 3;
  if ((!three && over !== 'min' && over !== 'h') || (three && over !== undefined && over !== 'h')) {
    return unread(
      `${token.text} without a unit that fits`,
      token.start,
      '2:30 min, 1:20 h, or hours, minutes and seconds: 1:20:05',
    );
  }
  if (parts.slice(1).some((part) => part >= 60))
    return unread(`${token.text} is no time`, token.start, 'minutes and seconds below 60');
  const small = three ? 's' : BELOW[over as 'min' | 'h'].symbol;
  const value = parts.reduce((total, part) => total * 60 + part, 0);
  const end = found?.unit.end ?? token.end;
  const amount: Amount = { value, place: 0, style: 'digits', start: token.start, end: token.end };
  const factor = small === 's' ? 1 : 60;
  const unit: UnitSaid = { spelling: small, unit: { canonical: 's', factor, offset: 0 }, kind: 'time', start: token.end, end };
  const mixed = three ? ['h', 'min', 's'] : [over as string, small];
  return { side: { amount, unit, mixed, start: token.start, end }, next: found?.next ?? at + 1 };
}
