/** How numbers without a hedge are read, as data for the page that defines it; the rules themselves stand in precision.ts and meaning.ts. */

export interface Reading {
  readonly name: string;
  /** What it means, in sentences for readers. */
  readonly meaning: string;
  /** Wordings that `readStated` reads; the page prints the intervals that it reads. */
  readonly examples: readonly string[];
}

export const READINGS: readonly Reading[] = [
  {
    name: 'digits and number words',
    meaning: 'Half of the last digit said, the lower end included. Zeros are digits: a round number is taken at its word.',
    examples: ['58 degrees', 'fifty-eight degrees', '60 degrees', '2.10 amps', 'two point one amps', '1,200 MHz'],
  },
  {
    name: 'below zero',
    meaning: 'The same, counted from zero, the end further from zero left out.',
    examples: ['minus 5 degrees', '5 degrees below zero'],
  },
  {
    name: 'million and more',
    meaning: 'The word names the last digit: half a million either way, or half of the last decimal before it.',
    examples: ['two million', '2.5 million'],
  },
  {
    name: 'fractions',
    meaning:
      'A quarter of the part said, since the next finer words halve it. Tenths, hundredths and thousandths are decimals: half of the part.',
    examples: ['half an hour', 'three quarters of an hour', 'two and a half hours', 'a third', 'three tenths of a volt'],
  },
  {
    name: 'an hour, two hours, twice',
    meaning: 'A quarter of one: for "a" and "an", and for whole hours, days and times below ten, which are also said in halves.',
    examples: ['an hour', 'a minute', '2 hours', 'twice as fast', 'three times as fast'],
  },
  {
    name: 'mixed times',
    meaning: 'Half of the last digit of the smallest unit.',
    examples: ['an hour and 20 minutes', '1 h 20 min', '2:30 min', '1:20:05'],
  },
  {
    name: 'ranges',
    meaning: 'From the first number to the second, both included, without rounding.',
    examples: ['69 to 72 degrees', 'between 69 and 72 degrees', '71 ± 2 °C'],
  },
  {
    name: 'percent and fractions with a comparison',
    meaning:
      'The ratio to what is compared with: faster, more, longer add to one, slower, less, shorter take from it. Without a comparison after it, the share itself.',
    examples: ['30 percent faster', '30 percent less', 'a third faster', 'half as much again', '30 percent'],
  },
  {
    name: 'differences of temperature',
    meaning:
      'Degrees with warmer, cooler, above the room, a rise of and the like are a difference, and so is kelvin. Cooler, less and lower give the direction: the size counts.',
    examples: ['6 degrees warmer', '6 degrees cooler', 'a rise of 48 degrees', '48 degrees above ambient', '6 kelvin'],
  },
];
