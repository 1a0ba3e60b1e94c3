/** Units of what a bench logs besides the physical quantities: bytes, frames, multiples. Only columns have them; a score keeps its author's word. */
import type { Unit } from '../../quantities/units.ts';

const BYTES = /^(?:([kKMGT])(i?))?(?:B|[Bb]ytes?)(\/s(?:ec)?|ps)?$/;
const BITS = /^([kKMGT])?(?:b|[Bb]its?)(\/s(?:ec)?|ps)$/;
const FRAMES = /^(?:fps|FPS|frames\/s(?:ec)?)$/;
const POWER: Readonly<Record<string, number>> = { k: 1, K: 1, M: 2, G: 3, T: 4 };

/** Reads `MB`, `MiB`, `KB/s`, `Mbit/s`, `fps`, `frames`, `x`; undefined for anything else. K counts as k. Binary multiples: IEC 80000-13:2025. */
export function dataUnit(text: string): Unit | undefined {
  const bytes = BYTES.exec(text);
  if (bytes) return multiple(bytes[1], bytes[2] === 'i', `B${bytes[3] === undefined ? '' : '/s'}`);
  const bits = BITS.exec(text);
  if (bits) return multiple(bits[1], false, 'bit/s');
  if (FRAMES.test(text)) return multiple(undefined, false, 'frames/s');
  if (text === 'frames') return multiple(undefined, false, 'frames');
  return text === 'x' ? multiple(undefined, false, '1') : undefined;
}

function multiple(prefix: string | undefined, binary: boolean, canonical: string): Unit {
  const power = prefix === undefined ? 0 : POWER[prefix]!;
  if (binary) return { canonical, factor: 1024 ** power, offset: 0 };
  return { canonical, factor: 1000 ** power, offset: 0, decimal: 3 * power };
}
