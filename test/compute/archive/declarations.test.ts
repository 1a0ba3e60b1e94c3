import { expect, test } from 'vitest';
import { othersGoOut, quantitiesRead } from '../../../src/compute/archive/declarations.ts';

test('compute/archive: an instrument is kept for what it read by hand, too', () => {
  const readings = [
    { quantity: 'power', instrument: 'meter' },
    { quantity: 'current', instrument: 'other' },
  ];
  const computed = { run: { context: { readings } }, summary: { channels: [] } } as unknown as Parameters<typeof quantitiesRead>[0];
  expect(quantitiesRead(computed, 'meter')).toEqual(['power']);
});

test('compute/archive: the first log keeps its start where a further one goes out as it is', () => {
  const cleaned = { sharedAs: 'cleaned only', redacted: null } as const;
  const whole = { sharedAs: 'as it came', redacted: null } as const;
  expect(othersGoOut([cleaned, whole])).toBe(true);
  expect(othersGoOut([cleaned, cleaned])).toBe(false);
  expect(othersGoOut([whole])).toBe(false);
});
