/** Colours of temperatures: as even to the eye as they are in kelvins, and from dark to light, so that they read in grey. */
import { scheme } from 'vega';

export type Colour = readonly [red: number, green: number, blue: number];

export const STEPS = 256;

/**
 * From nearly black over red to pale yellow, the coldest first.
 * Source: the map "inferno" of N. Smith and S. van der Walt (2015), CC0, as Vega has it.
 */
export function heatColours(): readonly Colour[] {
  const colour = scheme('inferno') as unknown as (share: number) => string;
  return Array.from({ length: STEPS }, (_, step) => parsed(colour(step / (STEPS - 1))));
}

function parsed(text: string): Colour {
  const hex = /^#(..)(..)(..)$/.exec(text);
  const numbers = hex ? hex.slice(1).map((part) => Number.parseInt(part, 16)) : (text.match(/\d+/g) ?? []).map(Number);
  const [red = 0, green = 0, blue = 0] = numbers;
  return [red, green, blue];
}
