/** How colours stand out from each other. */

export type Rgb = readonly [number, number, number];

/** sRGB to linear light: IEC 61966-2-1. */
export function linear(hex: string): Rgb {
  const [r, g, b] = [1, 3, 5]
    .map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return [r!, g!, b!];
}

/** Contrast ratio by WCAG 2.2, definitions "relative luminance" and "contrast ratio". */
export function contrast(one: string, other: string): number {
  const [a, b] = [one, other].map((hex) => {
    const [r, g, blue] = linear(hex);
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  }) as [number, number];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}
