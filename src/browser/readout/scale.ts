/** Temperatures in degrees Celsius or Fahrenheit, as a reader wants them. */

export type Scale = '°C' | '°F';

export function otherScale(scale: Scale): Scale {
  return scale === '°C' ? '°F' : '°C';
}

/** A value of the file with its unit, in the scale that was chosen: "83.9 °C", "183.0 °F"; a difference in K becomes one in °F. */
export function inScale(value: string, unit: string, scale: Scale): string {
  if (scale === '°F' && unit === '°C') return `${((Number(value) * 9) / 5 + 32).toFixed(1)} °F`;
  if (scale === '°F' && unit === 'K') return `${((Number(value) * 9) / 5).toFixed(1)} °F`;
  return unit === '1' || unit === '' ? value : `${value} ${unit}`;
}
