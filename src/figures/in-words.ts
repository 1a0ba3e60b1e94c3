/** Durations, numbers and lists inside sentences for readers: short, the same in every locale. */

/** "45 s", "12.5 min", "2.5 h": to three significant digits, seconds below two minutes, minutes below three hours. */
export function duration(seconds: number): string {
  if (seconds < 120) return `${plain(seconds)} s`;
  if (seconds < 10_800) return `${plain(seconds / 60)} min`;
  return `${plain(seconds / 3600)} h`;
}

/** At most three significant digits, without an exponent and without closing zeros. */
export function plain(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** "1 gap" or "3 gaps". */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** "fast", "fast and rated", "fast, rated and slow". */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** "one reading in 1 s", or nothing known with fewer than two rows. */
export function samplingOf(step: number | null): string {
  return step === null ? 'a single reading' : `one reading in ${duration(step)}`;
}
