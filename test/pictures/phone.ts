/**
 * A JPEG as a phone writes it, invented: position, serial number, owner, maker's notes, a thumbnail, XMP, IPTC, a comment, a wide colour
 * profile, turned on its side, and a second picture behind its end.
 */
import sharp from 'sharp';

/** Words that stand in its metadata and nowhere else: none of them may go out. */
export const SECRETS = [
  'N48-SECRET-LAT',
  'SERIAL-0451-XYZ',
  'Hazel Rowan Privately',
  'MAKERNOTE-4711',
  'xmp-secret-place',
  'IPTC-SECRET-CITY',
  'comment of nobody else',
  'THUMBNAIL-9',
  'BEHIND-THE-END',
];

/** What every IPTC block in a JPEG begins with, as bytes. */
export const IPTC_BLOCK = Buffer.from('50686f746f73686f7020332e30', 'hex').toString('latin1');

/** Names that metadata has in any of the formats. */
export const NAMES = ['Exif\0', 'http://ns.adobe.com/xap', IPTC_BLOCK, 'ICC_PROFILE', 'MPF\0', 'eXIf', 'iCCP', 'EXIF', 'XMP '];

/** A scene with an arrow of three colours, so that its orientation shows: wide × high as the sensor has it. */
export async function scene(width: number, height: number): Promise<Buffer> {
  const raw = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = 3 * (y * width + x);
      const left = x < width / 2;
      const top = y < height / 2;
      // Red upper left, green upper right, blue lower left, grey lower right.
      raw[at] = top && left ? 220 : 60 + ((x * 7 + y * 13) % 23);
      raw[at + 1] = top && !left ? 200 : 60;
      raw[at + 2] = !top && left ? 210 : 60;
    }
  }
  return sharp(raw, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 92 })
    .toBuffer();
}

/** Tags of a TIFF directory: number, type, value as bytes. */
type Tag = readonly [number: number, type: number, count: number, value: Buffer];

const ascii = (tag: number, text: string): Tag => [tag, 2, text.length + 1, Buffer.from(`${text}\0`, 'latin1')];

/** One directory, whose long values follow it. Source: TIFF 6.0, section 2. */
function directory(tags: readonly Tag[], at: number, next = 0): Buffer {
  const head = Buffer.alloc(2 + 12 * tags.length + 4);
  head.writeUInt16LE(tags.length, 0);
  head.writeUInt32LE(next, head.length - 4);
  const values: Buffer[] = [];
  let free = at + head.length;
  tags.forEach(([tag, type, count, value], index) => {
    const entry = 2 + 12 * index;
    head.writeUInt16LE(tag, entry);
    head.writeUInt16LE(type, entry + 2);
    head.writeUInt32LE(count, entry + 4);
    if (value.length <= 4) value.copy(head, entry + 8);
    else {
      head.writeUInt32LE(free, entry + 8);
      values.push(value);
      free += value.length;
    }
  });
  return Buffer.concat([head, ...values]);
}

const long = (value: number) => {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(value);
  return bytes;
};

function exif(orientation: number): Buffer {
  const thumbnail = Buffer.from('\xff\xd8THUMBNAIL-9\xff\xd9', 'latin1');
  const own = (pointers: readonly [number, number, number]) => [
    [0x0112, 3, 1, long(orientation)] as Tag,
    ascii(0x010f, 'Alder Phones (invented)'),
    ascii(0x013b, 'Hazel Rowan Privately'),
    [0x8769, 4, 1, long(pointers[0])] as Tag,
    [0x8825, 4, 1, long(pointers[1])] as Tag,
  ];
  const inner = [ascii(0xa431, 'SERIAL-0451-XYZ'), [0x927c, 7, 14, Buffer.from('MAKERNOTE-4711')] as Tag];
  const gps = [ascii(0x001d, '2026:03:14'), ascii(0x001b, 'N48-SECRET-LAT')];
  const size = (tags: readonly Tag[]) => directory(tags, 0).length;
  const first = 8;
  const second = first + size(own([0, 0, 0]));
  const third = second + size(inner);
  const fourth = third + size(gps);
  const small = (at: number): Tag[] => [
    [0x0201, 4, 1, long(at)],
    [0x0202, 4, 1, long(thumbnail.length)],
  ];
  const behind = fourth + size(small(0));
  return Buffer.concat([
    Buffer.from('Exif\0\0II*\0\x08\0\0\0', 'latin1'),
    directory(own([second, third, fourth]), first, fourth),
    directory(inner, second),
    directory(gps, third),
    directory(small(behind), fourth),
    thumbnail,
  ]);
}

function segment(marker: number, content: Buffer): Buffer {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(content.length + 2, 2);
  return Buffer.concat([head, content]);
}

const XMP =
  'http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF><dc:title>xmp-secret-place</dc:title></rdf:RDF></x:xmpmeta>';
const IPTC = `${IPTC_BLOCK}\x008BIM\x04\x04\0\0\0\0\0\x16\x1c\x02\x5a\0\x10IPTC-SECRET-CITY`;

/** The phone's file. `orientation` as EXIF counts it: 6 is turned a quarter clockwise for display. */
export async function phoneJpeg(width = 640, height = 480, orientation = 6): Promise<Buffer> {
  const wide = await sharp(await scene(width, height))
    .withIccProfile('p3')
    .jpeg({ quality: 92 })
    .toBuffer();
  const metadata = [
    segment(0xe1, exif(orientation)),
    segment(0xe1, Buffer.from(XMP, 'latin1')),
    segment(0xed, Buffer.from(IPTC, 'latin1')),
    segment(0xe2, Buffer.from('MPF\0II*\0\x08\0\0\0', 'latin1')),
    segment(0xfe, Buffer.from('comment of nobody else')),
  ];
  const second = Buffer.from('\xff\xd8\xff\xe1BEHIND-THE-END\xff\xd9', 'latin1');
  return Buffer.concat([wide.subarray(0, 2), ...metadata, wide.subarray(2), second]);
}
