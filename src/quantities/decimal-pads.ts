/** What printed numbers of one column lack behind their last digit, so that those of one unit stand with their decimal signs in line. */

/** Whole part, fraction, and what follows: a power of ten, a unit. */
const NUMBER = /^\u2212?\d+(\.\d+)?(\D.*)?$/su;

/**
 * For each printed number the characters that complete its fraction to the longest one of its unit: "71 °C" beside "71.32 °C" lacks
 * ".00". They are to be set invisibly behind the number, in digits of one width. Texts that are no number lack nothing.
 */
export function decimalPads(shown: readonly string[]): string[] {
  const printed = shown.map((text) => {
    const [whole, fraction = '', rest = ''] = NUMBER.exec(text) ?? [];
    return whole === undefined ? undefined : { length: fraction.length, rest };
  });
  return printed.map((own) => {
    if (own === undefined) return '';
    const longest = Math.max(...printed.map((other) => (other?.rest === own.rest ? other.length : 0)));
    return '.'.padEnd(longest, '0').slice(own.length, longest);
  });
}
