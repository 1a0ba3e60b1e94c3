/** Text by its bytes, so that nothing is decoded but the cells that are asked for: ASCII, with UTF-8 in its first lines, where names and units stand. */

const NUL = 0;
const LF = 10;
const CR = 13;

/** True where every byte is a letter of ASCII (ISO 646) and none is NUL. */
export function isAscii(bytes: Uint8Array): boolean {
  // Words begin at offsets that four divides.
  const first = Math.min(bytes.length, (4 - (bytes.byteOffset & 3)) & 3);
  const count = (bytes.length - first) >> 2;
  const words = count > 0 ? new Int32Array(bytes.buffer, bytes.byteOffset + first, count) : new Int32Array(0);
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

/** A text by its bytes: each is one letter but in the first lines. */
export interface ByteText {
  /** Line ends are LF, and none is NUL. */
  readonly bytes: Uint8Array;
  readonly isAscii: boolean;
  /** A piece of it, half open and within one line. */
  readonly cut: (from: number, to: number) => string;
  readonly whole: () => string;
}

/** Bytes at the beginning that may hold other letters. */
const HEAD = 2 ** 16;
/** Pieces cut out before it pays to decode all of the rest. */
const FEW = 20_000;

/** The text of bytes; null where it must be decoded as a whole: letters beyond ASCII further down, NUL, or no UTF-8. */
export function byteText(written: Uint8Array): ByteText | null {
  const end = written.indexOf(LF, Math.min(HEAD, written.length)) + 1;
  const headEnd = end > 0 ? end : Math.min(HEAD, written.length);
  if (!isAscii(written.subarray(headEnd)) || written.subarray(0, headEnd).includes(NUL)) return null;
  const plain = isAscii(written.subarray(0, headEnd));
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  if (!plain && !isUtf8(written.subarray(0, headEnd), decoder)) return null;
  const bytes = withLineFeeds(written);
  // Further letters stand above this line, which line ends of two bytes may have moved up.
  const from = plain ? 0 : bytes.indexOf(LF, Math.min(headEnd, bytes.length)) + 1 || bytes.length;
  return { bytes, isAscii: plain, ...decodedFrom(bytes, from, decoder) };
}

function isUtf8(bytes: Uint8Array, decoder: TextDecoder): boolean {
  try {
    decoder.decode(bytes);
    return true;
  } catch {
    return false;
  }
}

/** @param from - the line from which on each byte is a letter. */
function decodedFrom(bytes: Uint8Array, from: number, decoder: TextDecoder): Pick<ByteText, 'cut' | 'whole'> {
  let rest: string | null = null;
  let cuts = 0;
  const restOf = () => {
    rest ??= decoder.decode(bytes.subarray(from));
    return rest;
  };
  return {
    cut: (start, end) => {
      if (start < from || (rest === null && ++cuts <= FEW)) return decoder.decode(bytes.subarray(start, end));
      return restOf().slice(start - from, end - from);
    },
    whole: () => decoder.decode(bytes.subarray(0, from)) + restOf(),
  };
}
