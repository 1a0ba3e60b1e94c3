/** Bytes that are text as they are: ASCII without NUL, so that nothing is decoded but the cells that are asked for. */

const NUL = 0;
const LF = 10;
const CR = 13;

/** True where every byte is a letter of ASCII (ISO 646) and none is NUL. */
export function isAscii(bytes: Uint8Array): boolean {
  const first = Math.min(bytes.length, (4 - (bytes.byteOffset & 3)) & 3);
  const words = new Int32Array(bytes.buffer, bytes.byteOffset + first, (bytes.length - first) >> 2);
  let all = 0;
  for (let k = 0; k < words.length; k++) all |= words[k]!;
  let rest = 0;
  for (let k = 0; k < first; k++) rest |= bytes[k]!;
  for (let k = first + words.length * 4; k < bytes.length; k++) rest |= bytes[k]!;
  return (all & 0x80808080) === 0 && rest < 0x80 && !bytes.includes(NUL);
}

/** The same text with LF alone at the ends of lines; the array itself where it is so already. */
export function withLineFeeds(bytes: Uint8Array): Uint8Array {
  if (!bytes.includes(CR)) return bytes;
  if (!bytes.includes(LF)) return bytes.map((byte) => (byte === CR ? LF : byte));
  const out = new Uint8Array(bytes.length);
  let length = 0;
  for (let at = 0; at < bytes.length; at++) {
    const byte = bytes[at]!;
    if (byte !== CR) {
      out[length++] = byte;
      continue;
    }
    let end = at + 1;
    while (bytes[end] === CR) end++;
    // Several before a line end are one, as after a copy through two systems.
    if (end < bytes.length && bytes[end] !== LF) for (; at < end; at++) out[length++] = CR;
    else if (end === bytes.length) out[length++] = LF;
    at = end - 1;
  }
  return out.subarray(0, length);
}

/** A text whose bytes are its letters. */
export interface AsciiText {
  readonly bytes: Uint8Array;
  /** A piece of it, half open. */
  readonly cut: (from: number, to: number) => string;
  readonly whole: () => string;
}

/** Pieces cut out before it pays to decode the whole. */
const FEW = 20_000;

/** The text of such bytes, decoded as far as it is asked for. */
export function asciiText(bytes: Uint8Array): AsciiText {
  const decoder = new TextDecoder();
  let text: string | null = null;
  let cuts = 0;
  const whole = () => {
    text ??= decoder.decode(bytes);
    return text;
  };
  const cut = (from: number, to: number) => {
    if (text === null && ++cuts <= FEW) return decoder.decode(bytes.subarray(from, to));
    return whole().slice(from, to);
  };
  return { bytes, cut, whole };
}
