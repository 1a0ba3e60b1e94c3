import { describe, expect, test } from 'vitest';
import { PNG_SCALE, png } from '../../../src/plots/drawing/png.ts';

const svg = (text: string, family = 'Source Sans 3') =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="120" height="40"><rect width="120" height="40" fill="#fdfcf9"/><text x="4" y="24" font-size="16" font-family="${family}">${text}</text></svg>`;

describe('plots/drawing/png', () => {
  test('is a PNG (signature and IHDR of ISO/IEC 15948) at one and a half its size', async () => {
    const bytes = Buffer.from(await png(svg('71.3 °C')), 'base64');
    expect([...bytes.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    expect(bytes.toString('latin1', 12, 16)).toBe('IHDR');
    expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([120 * PNG_SCALE, 40 * PNG_SCALE]);
  });

  test('text is drawn with the fonts of the project, also where another family is named', async () => {
    const [none, some, other] = await Promise.all([png(svg('')), png(svg('τ = 7 min')), png(svg('τ = 7 min', 'No Such Face'))]);
    expect(some).not.toBe(none);
    expect(other).toBe(some);
  });

  test('the same drawing gives the same bytes', async () => {
    expect(await png(svg('load'))).toBe(await png(svg('load')));
  });
});
