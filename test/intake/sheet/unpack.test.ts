// Reference: zlib, as Node brings it, which packs here and has nothing to do with the library that unpacks.
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { UnpackFault, unpackWhole } from '../../../src/intake/sheet/unpack.ts';

const text = `t_s,soc_c\n${Array.from({ length: 400 }, (_, k) => `${k},${(40 + (k % 37) / 10).toFixed(1)}\n`).join('')}`;
const half = text.length >> 1;
const members = [gzipSync(text.slice(0, half)), gzipSync(text.slice(half))];
const packed = Buffer.concat(members);

function outcome(bytes: Uint8Array, most = 2 ** 29): string {
  try {
    return Buffer.from(unpackWhole(bytes, most)).toString();
  } catch (thrown) {
    return thrown instanceof UnpackFault ? thrown.kind : String(thrown);
  }
}

describe('unpacking', () => {
  it('reads members one after the other, stored, empty and small ones', () => {
    const lines = text.split(/(?<=\n)/).map((line) => gzipSync(line));
    for (const whole of [
      packed,
      gzipSync(text, { level: 0 }),
      Buffer.concat([members[0]!, gzipSync(''), members[1]!]),
      Buffer.concat(lines),
    ])
      expect(outcome(whole) === text).toBe(true);
  });

  it('takes zeros behind the last member for padding, and those within for its own', () => {
    const zeros = new Uint8Array(3000);
    for (const padding of [1, 7, 8, 9, 512, 20_480]) {
      expect(outcome(Buffer.concat([packed, Buffer.alloc(padding)])) === text).toBe(true);
      expect(outcome(Buffer.concat([gzipSync(''), Buffer.alloc(padding)]))).toBe('');
      for (const level of [0, 6])
        expect(outcome(Buffer.concat([gzipSync(zeros, { level }), Buffer.alloc(padding)]))).toHaveLength(zeros.length);
    }
    expect(outcome(Buffer.concat([packed, Buffer.alloc(512), Buffer.from('x')]))).toBe('damaged');
    expect(outcome(Buffer.concat([packed.subarray(0, -9), Buffer.alloc(512)]))).toBe('damaged');
  });

  it('gives all of it or a fault wherever the file is cut', () => {
    const cuts = Array.from({ length: packed.length - 2 }, (_, k) => k + 2).filter((at) => at !== members[0]!.length);
    expect(cuts.filter((at) => outcome(packed.subarray(0, at)) !== 'damaged')).toEqual([]);
  });

  it('never gives another text where a bit is another', () => {
    const wrong = Array.from({ length: packed.length - 2 }, (_, k) => k + 2).filter((at) => {
      const harmed = Buffer.from(packed);
      harmed[at]! ^= 1 << (at % 8);
      return ![text, 'damaged'].includes(outcome(harmed));
    });
    expect(wrong).toEqual([]);
  });

  it('stops at a file that would become too large', () => {
    expect(outcome(gzipSync(new Uint8Array(3_000_000)), 1_000_000)).toBe('too-large');
  });
});
