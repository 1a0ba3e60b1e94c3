/** A rounded numeral as readers see it. */
import { decimalOf } from './decimal.ts';

const MINUS = '\u2212';
const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** True minus sign; powers of ten (`1.2 × 10⁻⁷`) where plain writing would be zeros mostly: ten digits before the point, or five zeros after it. */
export function readerForm(numeral: string): string {
  const sign = numeral.startsWith('-') ? MINUS : '';
  const plain = numeral.replace('-', '');
  const [whole = '', fraction = ''] = plain.split('.');
  const zeros = whole === '0' ? (/^0*/.exec(fraction)?.[0].length ?? 0) : 0;
  const readable = whole.length < 10 && (zeros < 5 || zeros === fraction.length);
  return sign + (readable ? plain : powerForm(plain));
}

/** Keeps the decimals that a small number was rounded to; of a large one the digits before its trailing zeros. */
function powerForm(plain: string): string {
  const digits = plain.replace('.', '').replace(/^0+/, '');
  const kept = plain.includes('.') ? digits : digits.replace(/0+$/, '');
  const { digits: value, exponent } = decimalOf(Number(plain));
  const power = value.toString().length + exponent - 1;
  const mantissa = kept.length > 1 ? `${kept[0]}.${kept.slice(1)}` : kept;
  return `${mantissa}\u00a0×\u00a010${power < 0 ? '⁻' : ''}${[...String(Math.abs(power))].map((digit) => SUPERSCRIPTS[Number(digit)]).join('')}`;
}
