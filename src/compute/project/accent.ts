/** The author's colour of links, and whether it can be read on our paper. */

/** What links stand on, by look: the paper, tinted blocks, and the window of a plot. A test holds them to palette.css. */
export const UNDER_LINKS = {
  light: { paper: '#fdfcf9', tint: '#f3f0e8', window: '#efe9d8' },
  dark: { paper: '#16181a', tint: '#202326', window: '#2f2d22' },
} as const;

/** WCAG 2.2, success criterion 1.4.3, for text of ordinary size. */
const LEAST = 4.5;

/** What is wrong with a colour as six hexadecimal digits behind `#`; undefined where it stands out enough from all that links stand on. */
export function accentFault(
  look: 'light' | 'dark',
  colour: string,
): { found: string; expected: string; remedy: string } | undefined {
  const ratios = Object.entries(UNDER_LINKS[look]).map(([name, under]) => [name, under, contrast(colour, under)] as const);
  const [name, under, least] = ratios.reduce((worst, each) => (each[2] < worst[2] ? each : worst));
  if (least >= LEAST) return undefined;
  // Never rounded up to what would be enough.
  const told = (Math.floor(least * 100) / 100).toFixed(2);
  return {
    found: `\`${colour}\` stands out from the ${look} ${name} (${under}) as ${told} to 1`,
    expected: `at least ${LEAST} to 1, so that links can be read (WCAG 2.2, 1.4.3)`,
    remedy: look === 'light' ? 'take a darker colour' : 'take a lighter colour',
  };
}

/** Contrast ratio of two colours: WCAG 2.2, definitions "relative luminance" and "contrast ratio". From 1 to 21. */
export function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => light(Number.parseInt(colour.slice(at, at + 2), 16) / 255)) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** From an sRGB channel to linear light: IEC 61966-2-1. */
function light(channel: number): number {
  return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
}
