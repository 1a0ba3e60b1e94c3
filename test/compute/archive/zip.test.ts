import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { unzipSync, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { writeZip } from '../../../src/compute/archive/zip.ts';

const MODULE = fileURLToPath(new URL('../../../src/compute/archive/zip.ts', import.meta.url));

const bytes = (text: string) => new TextEncoder().encode(text);

function zipped(files: ReadonlyMap<string, Uint8Array>, day: string): Uint8Array {
  const pieces: Uint8Array[] = [];
  writeZip(new Map([...files].map(([path, content]) => [path, () => content])), day, (piece) => pieces.push(piece.slice()));
  return Buffer.concat(pieces);
}

test('compute/archive/zip: what goes in comes out', () => {
  const files = new Map([
    ['b/ü.csv', bytes('1,2\r\n'.repeat(1000))],
    ['a.txt', bytes('')],
  ]);
  const archive = zipped(files, '2026-03-21');
  expect(Object.keys(unzipSync(archive))).toEqual(['a.txt', 'b/ü.csv']);
  for (const [path, content] of Object.entries(unzipSync(archive)))
    expect(Buffer.from(content).equals(files.get(path)!)).toBe(true);
  expect(archive.length).toBeLessThan(1000);
});

test('compute/archive/zip: written file by file, it has the bytes that the library gives of all files at once', () => {
  const files = new Map([
    ['b/ü.csv', bytes('1,2\r\n'.repeat(1000))],
    ['a.jpg', Uint8Array.from({ length: 5000 }, (_, at) => at * at)],
    ['c', bytes('')],
  ]);
  const tree = Object.fromEntries(
    [...files]
      .sort()
      .map(([path, content]): [string, [Uint8Array, { level: 0 | 6 }]] => [
        path,
        [content, { level: path.endsWith('.jpg') ? 0 : 6 }],
      ]),
  );
  const whole = zipSync(tree, { mtime: new Date(2026, 2, 21, 12), os: 3, attrs: 0o100644 << 16 });
  expect(Buffer.from(zipped(files, '2026-03-21')).equals(whole)).toBe(true);
  expect(zipped(new Map(), '2026-03-21')).toEqual(Buffer.from(zipSync({})));
});

test('compute/archive/zip: names are UTF-8, of files made on UNIX, so that what unpacks them takes them as they are', () => {
  const archive = Buffer.from(zipped(new Map([['b/ü.csv', bytes('1')]]), '2026-03-21'));
  // Fields of the central directory: APPNOTE.TXT (PKWARE, .ZIP File Format Specification 6.3), 4.3.12.
  const entry = archive.subarray(archive.indexOf('PK\x01\x02', 0, 'latin1'));
  const [madeBy, flags, attributes, length] = [entry[5], entry.readUInt16LE(8), entry.readUInt32LE(38), entry.readUInt16LE(28)];
  expect({ madeBy, utf8: (flags & 0x800) !== 0 }).toEqual({ madeBy: 3, utf8: true });
  expect((attributes >>> 16).toString(8)).toBe('100644');
  expect(entry.subarray(46, 46 + length!).toString('utf8')).toBe('b/ü.csv');
});

test('compute/archive/zip: the order of files is of no account', () => {
  const files: [string, Uint8Array][] = [
    ['a', bytes('1')],
    ['b', bytes('2')],
  ];
  expect(zipped(new Map(files), '2026-03-21')).toEqual(zipped(new Map(files.toReversed()), '2026-03-21'));
});

test.each(['1970-01-01', '1980-01-01', '2099-12-31', '9999-12-31'])('compute/archive/zip: the day %s can be written', (day) => {
  expect(Object.keys(unzipSync(zipped(new Map([['a', bytes('1')]]), day)))).toEqual(['a']);
});

test('compute/archive/zip: every zone writes the same bytes', () => {
  // Days on which clocks are put forward: at midnight in Beirut, at two in Berlin, so that midnight or the hour is missing.
  const code = `const { writeZip } = await import(${JSON.stringify(`file://${MODULE}`)});
for (const day of ['2026-03-29', '2026-10-25', '2026-01-02']) {
  writeZip(new Map([['a', () => Buffer.from('1')]]), day, (piece) => process.stdout.write(Buffer.from(piece).toString('hex')));
  process.stdout.write('\\n');
}`;
  const [first, ...others] = [
    'UTC',
    'Asia/Beirut',
    'Europe/Berlin',
    'Pacific/Auckland',
    'America/St_Johns',
    'Pacific/Pago_Pago',
  ].map((TZ) => {
    const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', code], {
      encoding: 'utf8',
      env: { ...process.env, TZ },
    });
    expect(stderr).toBe('');
    return stdout;
  });
  expect(first!.length).toBeGreaterThan(300);
  for (const other of others) expect(other).toBe(first);
});

// With all bits of the number of files set, a program would look for the 64-bit extension (APPNOTE.TXT, 4.4.1.4).
test('compute/archive/zip: refuses as many files as the field cannot say', () => {
  const files = new Map(Array.from({ length: 0xffff }, (_, at) => [String(at), () => bytes('')] as const));
  expect(() => writeZip(files, '2026-03-21', () => {})).toThrow('larger than a zip can be');
});
