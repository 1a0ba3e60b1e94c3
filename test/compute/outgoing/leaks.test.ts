import { gzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { leaksOf } from '../../../src/compute/outgoing/leaks.ts';
import { phoneJpeg } from '../../pictures/phone.ts';
import { siteOf } from './site.ts';

const OWN = { names: ['rowan', 'root', 'x', 'max'], harmless: [] as string[] };
const told = (texts: Record<string, string | Uint8Array>, own = OWN) =>
  leaksOf(siteOf(texts), own).map(
    ({ severity, place: { file, line, column }, found }) => `${file}:${line}:${column} ${severity}: ${found}`,
  );

describe('compute/outgoing/leaks', () => {
  it.each([
    ['/home/alder/logs/soak.csv', 'error: this file says a path of a machine, `/home/alder`'],
    ['/Users/alder/soak.csv', 'error: this file says a path of a machine, `/Users/alder`'],
    ['C:\\Users\\alder', 'error: this file says a path of a machine, `C:\\Users\\alder`'],
    ['c:\\users\\alder', 'error: this file says a path of a machine, `c:\\users\\alder`'],
    ['/media/alder/STICK', 'error: this file says a path of a machine, `/media/alder`'],
    ['/Volumes/Alder', 'error: this file says a path of a machine, `/Volumes/Alder`'],
    ['/home/max/a', 'error: this file says a path of a machine, `/home/max`'],
    ['B8-27-EB-12-34-56', "error: this file says a network card's own number, `B8-27-EB-12-34-56`"],
    ['Serial Number 12345678', 'error: this file says a serial number, `12345678`'],
    ['SN: 4X20931', 'error: this file says a serial number, `4X20931`'],
    ['S/N 00123456', 'error: this file says a serial number, `00123456`'],
    ['t,Lat [deg],Lon [deg]', 'error: this file says a column of positions, `Lat [deg],Lon [deg]`'],
    ['latitude_deg,longitude_deg', 'error: this file says a column of positions, `latitude_deg,longitude_deg`'],
    ['192.168.1.20', 'error: this file says an address of a private network, `192.168.1.20`'],
    ['10.0.0.7', 'error: this file says an address of a private network, `10.0.0.7`'],
    ['172.31.0.1', 'error: this file says an address of a private network, `172.31.0.1`'],
    ['169.254.3.4', 'error: this file says an address of a private network, `169.254.3.4`'],
    ['fe80::1ff:fe23:4567:890a', 'error: this file says an address of a private network, `fe80::1ff:fe23:4567:890a`'],
    ['fd12:3456:789a:1::1', 'error: this file says an address of a private network, `fd12:3456:789a:1::1`'],
    ['bench-pc.local', 'error: this file says a name in a private network, `bench-pc.local`'],
    ['b8:27:eb:12:34:56', "error: this file says a network card's own number, `b8:27:eb:12:34:56`"],
    ['serial: 10000000ab12cd34', 'error: this file says a serial number, `10000000ab12cd34`'],
    ['S/N: 4X-20931', 'error: this file says a serial number, `4X-20931`'],
    ['"latitude": 52.51631', 'error: this file says a position on the earth, `52.51631`'],
    ['time,lat,lon', 'error: this file says a column of positions, `lat,lon`'],
    ['by Rowan', 'error: this file says a name of this machine or of its user, `Rowan`'],
    ['me@bench.example', 'warning: this file says a mail address, `me@bench.example`'],
  ])('finds %s in a log, an archive and a page', (text, found) => {
    for (const path of ['a.csv', 'index.html'])
      expect(told({ [path]: `t,x\n${text}\n` }).map((line) => line.replace(/^\S+ /, ''))).toEqual([found]);
    expect(told({ 'a.zip': zipSync({ 'logs/soak.csv': Buffer.from(`t,x\n${text}\n`) }) })).toEqual([`dist/a.zip:1:1 ${found}`]);
  });

  it.each([
    ['10.0.0.999', 'no address'],
    ['1.10.0.0.7', 'a number of a version'],
    ['172.32.0.1', 'a public address'],
    ['00:00:00:00:00:00', 'no card'],
    ['2026-03-14T12:34:56', 'a time'],
    ['latitude of the method', 'a word'],
    ['the root of a crown', 'a word, and a name that everybody has'],
    ['a serial port', 'no number'],
    ['rowanberry', 'a longer word'],
    ['version 10.2.0.14', 'a number of a version'],
    ['firmware: v10.2.0.14', 'a number of a version'],
    ['26-03-14-12-34-56', 'a date and a time'],
    ['/home/user/soak.csv', 'a path that everybody has'],
    ['the max of the load', 'a word, though somebody is named so'],
    ['a serial number of 16 characters', 'no number'],
  ])('leaves %s alone: %s', (text) => {
    expect(told({ 'a.txt': text })).toEqual([]);
  });

  it.each([
    ['UTF-16', 'a.csv', Buffer.from('\ufeffhost\n10.0.0.7\n', 'utf16le'), '2:1'],
    ['an ending in capitals', 'SOAK.CSV', Buffer.from('10.0.0.7'), '1:1'],
    ['another ending', 'a.dat', Buffer.from('10.0.0.7'), '1:1'],
    ['no ending', 'soak', Buffer.from('10.0.0.7'), '1:1'],
    ['gzip', 'a.csv.gz', gzipSync(Buffer.from('t\n10.0.0.7')), '1:1'],
    ['gzip under the name of a table', 'a.csv', gzipSync(Buffer.from('10.0.0.7')), '1:1'],
    ['the name in a packed file', 'a.gz', gzipSync(Buffer.from('t'), { filename: '10.0.0.7' }), '1:1'],
    ['the names in an archive', 'a.zip', zipSync({ '10.0.0.7/a': Buffer.from('t') }), '1:1'],
    ['an archive in an archive', 'a.zip', zipSync({ 'b.gz': gzipSync(Buffer.from('10.0.0.7')) }), '1:1'],
    ['an archive of files as they are', 'a.tar', Buffer.from(`soak${'\0'.repeat(508)}10.0.0.7\n${'\0'.repeat(503)}`), undefined],
  ])('goes by the bytes: %s', (_what, path, bytes, place) => {
    const found = told({ [path]: bytes });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(`dist/${path}:${place ?? ''}`);
    expect(found[0]).toMatch(/error: this file says an address of a private network, `10\.0\.0\.7`$/);
  });

  it('looks for no words in bytes that are no text', () => {
    const noise = Uint8Array.from({ length: 5000 }, (_, at) => (at * 167 + (at >> 3) * 31) % 256);
    expect(told({ 'a.woff2': Buffer.concat([noise, Buffer.from(' 10.0.0.7 '), noise]) })).toEqual([]);
  });

  it.each([
    ['a.gz', gzipSync(Buffer.from('t'.repeat(500))).subarray(0, 20)],
    ['a.zip', zipSync({ a: Buffer.from('t') }).subarray(0, 30)],
  ])('tells what it cannot unpack: %s', (path, bytes) => {
    expect(told({ [path]: bytes })).toEqual([
      `dist/${path}:1:1 warning: this file says something that cannot be unpacked, and that nobody looked into`,
    ]);
  });

  it('finds what a camera wrote beside the picture', async () => {
    const [found = ''] = told({ 'a.jpg': await phoneJpeg() });
    expect(found).toMatch(
      /^dist\/a\.jpg:1:1 error: this file says something beside its picture \(FFE1\), where cameras write position/,
    );
  });

  it('tells a finding once, with its place and how many other files say it', () => {
    expect(told({ 'a.txt': 'x\n at 10.0.0.7', 'b.txt': '10.0.0.7', 'c.txt': '10.0.0.7' })).toEqual([
      'dist/a.txt:2:5 error: this file says an address of a private network, `10.0.0.7`, and so do 2 other files',
    ]);
  });

  it('lets through what its author calls harmless', () => {
    expect(told({ 'a.txt': '10.0.0.7' }, { ...OWN, harmless: ['10.0.0.7'] })).toEqual([]);
  });
});
