/** Bytes of a file -> text, by evidence: byte-order mark, strict UTF-8, UTF-16 by its pattern of NUL bytes, then Windows-1252. */
import { type ByteText, byteText } from './byte-text.ts';

export interface Decoded {
  /** Without byte-order mark and without the run of NUL bytes at the end; line ends are `\n`. Decoded when first asked for where `inBytes` is there. */
  readonly text: string;
  /** The text by its bytes, where most lines are ASCII. */
  readonly inBytes: ByteText | null;
  /** Name of the encoding and how it was told. */
  readonly encoding: string;
  /** Number of NUL bytes cut from the end. */
  readonly nulTail: number;
  /** 1-based lines that do not fit the encoding of the rest. */
  readonly oddLines: readonly number[];
}

/** Decodes the bytes of a text file. Never throws: what fits no encoding is read as Windows-1252 and its lines are named. */
export function decode(bytes: Uint8Array): Decoded {
  const utf16 = utf16Kind(bytes);
  if (utf16) {
    const text = new TextDecoder(utf16.label).decode(bytes);
    const cut = text.replace(/\0+$/, '');
    return { text: unifyLineEnds(cut), inBytes: null, encoding: utf16.name, nulTail: (text.length - cut.length) * 2, oddLines: [] };
  }
  let end = bytes.length;
  while (end > 0 && bytes[end - 1] === 0) end--;
  const marked = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  const body = bytes.subarray(marked ? 3 : 0, Math.max(end, marked ? 3 : 0));
  const nulTail = bytes.length - end;
  const inBytes = byteText(body);
  return inBytes ? ofBytes(inBytes, marked, nulTail) : { ...decodeBytes(body, marked), inBytes: null, nulTail };
}

function ofBytes(inBytes: ByteText, marked: boolean, nulTail: number): Decoded {
  let text: string | null = null;
  return {
    get text() {
      text ??= inBytes.whole();
      return text;
    },
    inBytes,
    encoding: marked ? MARKED : inBytes.isAscii ? 'ASCII' : UTF8,
    nulTail,
    oddLines: [],
  };
}

const MARKED = 'UTF-8 (byte-order mark)';
const UTF8 = 'UTF-8 (every byte fits)';

type Read = Omit<Decoded, 'nulTail' | 'inBytes'>;

function decodeBytes(body: Uint8Array, marked: boolean): Read {
  const strict = strictUtf8(body);
  if (strict !== null) {
    // Beyond ASCII a character takes two bytes or more.
    const encoding = marked ? MARKED : strict.length === body.length ? 'ASCII' : UTF8;
    return { text: unifyLineEnds(strict), encoding, oddLines: [] };
  }
  return decodeByLine(body);
}

/** Line by line, so that two encodings in one file both stay readable; a line that is UTF-8 beyond ASCII is not so by chance. */
function decodeByLine(body: Uint8Array): Read {
  const latin = new TextDecoder('windows-1252');
  const parts: string[] = [];
  const utf8Lines: number[] = [];
  const latinLines: number[] = [];
  const unfit: number[] = [];
  let from = 0;
  while (from < body.length) {
    const stop = body.indexOf(10, from);
    const to = stop < 0 ? body.length : stop + 1;
    const slice = body.subarray(from, to);
    const strict = strictUtf8(slice);
    const text = strict ?? latin.decode(slice);
    parts.push(text);
    if (strict === null) (/[\u0080-\u009f]/.test(text) ? unfit : latinLines).push(parts.length);
    else if (isBeyondAscii(strict)) utf8Lines.push(parts.length);
    from = to;
  }
  const mostlyUtf8 = utf8Lines.length > latinLines.length;
  const encoding = mostlyUtf8
    ? 'UTF-8, with lines in Windows-1252'
    : 'Windows-1252 (the bytes are not UTF-8; which 8-bit encoding it is cannot be proved)';
  const odd = [...unfit, ...(mostlyUtf8 ? latinLines : utf8Lines)].sort((a, b) => a - b);
  return { text: unifyLineEnds(parts.join('')), encoding, oddLines: odd };
}

function strictUtf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

function isBeyondAscii(text: string): boolean {
  return /[\u0080-\uffff]/.test(text);
}

function utf16Kind(bytes: Uint8Array): { label: string; name: string } | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { label: 'utf-16le', name: 'UTF-16LE (byte-order mark)' };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { label: 'utf-16be', name: 'UTF-16BE (byte-order mark)' };
  const length = Math.min(bytes.length, 4096) & ~1;
  if (length < 8) return null;
  const zeros: [number, number] = [0, 0];
  for (let i = 0; i < length; i++) if (bytes[i] === 0) zeros[(i & 1) as 0 | 1]++;
  const pairs = length / 2;
  if (zeros[1] > 0.6 * pairs && zeros[0] < 0.05 * pairs) return { label: 'utf-16le', name: 'UTF-16LE (pattern of NUL bytes)' };
  if (zeros[0] > 0.6 * pairs && zeros[1] < 0.05 * pairs) return { label: 'utf-16be', name: 'UTF-16BE (pattern of NUL bytes)' };
  return null;
}

function unifyLineEnds(text: string): string {
  if (!text.includes('\r')) return text;
  return text.includes('\n') ? text.replace(/\r+(?:\n|$)/g, '\n') : text.replace(/\r/g, '\n');
}
