import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, inject, test } from 'vitest';
import { publishNote } from '../../../src/commands/publish/publish-note.ts';
import { recordComparison } from '../../../src/commands/record/record-comparison.ts';
import { verifyFiles } from '../../../src/commands/verify/verify-files.ts';
import { compute } from '../../../src/compute/compute.ts';
import type { ComparisonModel, Manifest, NoteModel, RunModel } from '../../../src/compute/results.ts';
import { digest } from '../../../src/compute/store/digest.ts';
import { openStore } from '../../../src/compute/store/store.ts';
import type { PublishedState } from '../../../src/register/sealed/published-states.ts';
import { pairOf } from '../../figures/alignment/pairs.ts';

/** A run with a device's log and a meter's, whose clocks lie 37 s apart: what an author types of the two stands below `logs`. */
const RUN = `title: Meter beside the device
date: 2026-03-14
device: invented
specimen: no-1
conditions:
  ambient: 22 ± 0.5 °C
logs:
  device: bench/device.csv
  meter:
    file: bench/meter.csv
    time:
      zone: UTC
    offset: by load edge
channels:
  cpu:
    quantity: utilisation
    column: "cpu [%]"
  soc:
    quantity: temperature
    column: "soc [°C]"
  input:
    quantity: power
    column: "Leistung [W]"
    at: board input
phases: auto
`;
/** The same with the meter's log first, which begins a minute after the device's. */
const METER_FIRST = `  meter:
    file: again/meter.csv
    time:
      zone: UTC
    share: cleaned only
  device:
    file: again/device.csv
    offset: by load edge
`;
/** What was read off a display and benchmarked, and nothing logged. */
const hand = (title: string, amperes: string) => `title: ${title}
date: 2026-03-15
device: invented
specimen: no-1
conditions:
  ambient: 22 ± 0.5 °C
  supply: 5.000 V at board input
log: none
readings:
  - quantity: current
    value: ${amperes}
    step: 0.02 A
    phase: load
    at: board input
  - quantity: temperature
    value: [61.2 °C, 61.4 °C, 61.3 °C]
    phase: load
    shows: settled
scores: bench/scores.csv
`;
const OLDER = `title: Hot little boxes
source:
  author: R. Fern
  address: https://articles.example/boxes
  date: 2024-05-02
  accessed: 2026-03-01
device: Invented device, another specimen
conditions:
  ambient: about 24 °C
figures:
  steady_temperature: 63 °C
  load_power: 9.5 ± 0.1 W
`;
const SCORES = `test,repeat,value,unit,better
mix,1,100,points,higher
mix,2,102,points,higher
`;
const NOTE = `title: Two clocks
date: 2026-03-20
status: published
runs:
  both: both
  other: other
  hand: hand
quoted:
  older: older
comparisons:
  two: two
  hands: hands
`;

const pair = pairOf(5);
const other = pairOf(6);
const FILES: Readonly<Record<string, string | Uint8Array>> = {
  'content/devices/invented.md': page('title: Invented device\nmaker: Nobody (invented)\ninvented: yes\n'),
  'content/runs/both.md': page(RUN),
  'content/runs/other.md': page(
    RUN.replace('Meter beside', 'Again, meter beside').replace(/^ {2}device: bench[\s\S]*?(?=^channels:)/m, METER_FIRST),
  ),
  'content/comparisons/two.md': page('title: Twice\nruns:\n  both: both\n  other: other\nreference: both\n'),
  'content/runs/hand.md': page(hand('Read by hand', '1.84 A')),
  'content/runs/hand-again.md': page(hand('Read by hand again', '1.86 A')),
  'content/comparisons/hands.md': page(
    'title: Two displays\nruns:\n  first: hand\n  second: hand-again\nreference: first\nquoted: older\n',
  ),
  'content/quoted/older.md': page(OLDER),
  'content/notes/clocks.md': page(
    NOTE,
    'Under load it takes :value[both.load_power], and :value[other.load_power] again. A display said :value[hand.load_power].\n\n' +
      'An older article had :value[older.steady_temperature], and it is :claim[perhaps cooler]{is="hand.steady_temperature < older.steady_temperature" outcome="untold"} here.\n\n' +
      '::table{runs="hand older" of="steady_temperature load_power"}\n',
  ),
  'data/bench/scores.csv': SCORES,
  'data/bench/device.csv': pair.device.bytes,
  'data/bench/meter.csv': pair.meter.bytes,
  'data/again/device.csv': other.device.bytes,
  'data/again/meter.csv': other.meter.bytes,
};

function page(front: string, body = ''): string {
  return `---\n${front}---\n\n${body}`;
}

function project(files: Readonly<Record<string, string | Uint8Array>>): string {
  const root = mkdtempSync(join(inject('scratch'), 'several-logs-'));
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), content);
  }
  return root;
}

const modelOf = (path: string) => {
  const { blob } = site.pages.find((each) => each.path === path)!;
  return JSON.parse(Buffer.from(openStore(root).bytes(blob)).toString('utf8')) as unknown;
};

let root: string;
let site: Manifest;
let rebuilt: { readonly root: string; readonly site: Manifest };
let archive: ReturnType<typeof unzipSync>;
/** Where the record copy stands on the site. */
let copy: string;

const printer = { out: () => {}, err: () => {} };

const errors = ({ problems }: Manifest) => problems.filter(({ severity }) => severity === 'error');
function bytesAt(at: string, { files }: Manifest, path: string): Buffer {
  const file = files.find((each) => each.path === path);
  if (!file) throw new Error(`no ${path} among ${files.map((each) => each.path).join(' ')}`);
  return Buffer.from(openStore(at).bytes(file.blob));
}

beforeAll(async () => {
  root = project(FILES);
  expect(await recordComparison(root, ['content/comparisons/two.md'], printer)).toBe(0);
  expect(await publishNote(root, ['content/notes/clocks.md', '--date', '2026-03-20'], printer)).toBe(0);
  site = await compute(root, 'site');
  expect(errors(site)).toEqual([]);
  copy = site.files.map(({ path }) => path).find((path) => /^record-copies\/.*\/record\.json$/.test(path)) ?? '';
  archive = unzipSync(bytesAt(root, site, 'notes/clocks/clocks.zip'));
  const again = project(archive);
  rebuilt = { root: again, site: await compute(again, 'site') };
}, 300_000);

describe('compute: a run with two logs', () => {
  test('both files go out byte for byte, each with its digest, and the page says how their clocks were brought together', () => {
    for (const [name, { bytes }] of [
      ['device', pair.device],
      ['meter', pair.meter],
    ] as const)
      expect(bytesAt(root, site, `runs/both/data/${name}.csv`).equals(Buffer.from(bytes))).toBe(true);
    const model = modelOf('runs/both/') as RunModel;
    expect(model.logs.map(({ name, step }) => [name, step])).toEqual([
      ['device', '1\u00a0s'],
      ['meter', '1\u00a0s'],
    ]);
    expect(model.inferences.join('\n')).toMatch(/The log meter was brought to the clock of device by 2 edges of the load/);
    expect(model.data.files.filter(({ role }) => role === 'log').map(({ sha256 }) => sha256)).toEqual(
      [pair.device, pair.meter].map(({ bytes }) => digest(bytes)),
    );
    expect(model.budgets.some(({ rows }) => rows.some(({ title }) => title.startsWith('clock of the log meter')))).toBe(true);
  });

  test('the page says how many rows of a further log stand before the first row of the first', () => {
    const left = (path: string) => (modelOf(path) as RunModel).logs.map((log) => log.left);
    expect(left('runs/both/')).toEqual(['', '']);
    expect(left('runs/other/')).toEqual(['', expect.stringMatching(/^6[0-2] rows before the first log’s first row$/)]);
  });

  test('figures.json, the description and the digests name both', () => {
    const json = JSON.parse(bytesAt(root, site, 'runs/both/figures.json').toString()) as {
      log: { file: string };
      other_logs: { file: string; name: string; u_s: number }[];
    };
    expect(json.log.file).toBe('data/bench/device.csv');
    expect(json.other_logs).toMatchObject([{ file: 'data/bench/meter.csv', name: 'meter' }]);
    expect(json.other_logs[0]!.u_s).toBeGreaterThan(0.2);
    const described = JSON.parse(bytesAt(root, site, 'runs/both/data/datapackage.json').toString()) as {
      resources: { name: string }[];
    };
    expect(described.resources.map(({ name }) => name)).toEqual(['log-device', 'cleaned-device', 'log-meter', 'cleaned-meter']);
    const { digests } = JSON.parse(bytesAt(root, site, 'digests.json').toString()) as { digests: Record<string, object> };
    for (const { bytes } of [pair.device, pair.meter]) expect(digests).toHaveProperty(digest(bytes));
  });

  test('the archive builds again in an empty checkout to the same figures.json', () => {
    expect(errors(rebuilt.site)).toEqual([]);
    for (const path of [
      'runs/both/figures.json',
      'runs/hand/figures.json',
      'comparisons/two/figures.json',
      'comparisons/hands/figures.json',
      'notes/clocks/ledger.json',
    ])
      expect(bytesAt(rebuilt.root, rebuilt.site, path).equals(Buffer.from(archive[`as-published/${path}`]!)), path).toBe(true);
    expect(readFileSync(join(rebuilt.root, 'data/bench/meter.csv')).equals(Buffer.from(pair.meter.bytes))).toBe(true);
  });

  test('the record copy and the published state of the note hold both logs, and stand in the rebuilt project as they were', () => {
    const held = bytesAt(root, site, copy).toString();
    for (const { bytes } of [pair.device, pair.meter]) expect(held).toContain(digest(bytes));
    expect(bytesAt(rebuilt.root, rebuilt.site, copy).toString()).toBe(held);
    // Of its sources the archive names those that go out, and so it is sealed anew.
    const [file, more] = Object.keys(archive).filter((path) => path.startsWith('content/published/'));
    expect(more).toBeUndefined();
    const [was, is] = [root, rebuilt.root].map((at) => JSON.parse(readFileSync(join(at, file!), 'utf8')) as PublishedState);
    expect([is!.entries, is!.plots]).toEqual([was!.entries, was!.plots]);
  });

  test('verify knows each log by its digest, in the project and rebuilt', async () => {
    for (const at of [root, rebuilt.root]) {
      const said: string[] = [];
      const streams = { ...printer, folder: at, out: (text: string) => said.push(text) };
      expect(await verifyFiles(at, ['data/bench/device.csv', 'data/bench/meter.csv'], streams)).toBe(0);
      expect(said.map((line) => line.split(' (')[0])).toEqual([
        'data/bench/device.csv: log device as it came, Meter beside the device',
        'data/bench/meter.csv: log meter as it came, Meter beside the device',
      ]);
    }
  });

  test('where one of the logs stays with its author, cleaned readings stand in for it, with the same figures', () => {
    const figures = (bytes: Uint8Array) => {
      const { figures: all } = JSON.parse(Buffer.from(bytes).toString()) as {
        figures: Record<string, { from: object; of: object }>;
      };
      return Object.fromEntries(Object.entries(all).map(([address, { from: _, ...figure }]) => [address, figure]));
    };
    expect(Object.keys(archive)).not.toContain('data/again/meter.csv');
    const again = bytesAt(rebuilt.root, rebuilt.site, 'runs/other/figures.json');
    expect(figures(again)).toEqual(figures(archive['as-published/runs/other/figures.json']!));
  });
});

describe('compute: a run without a log', () => {
  test('has its page with readings, figures and scores, and says that it has no log', () => {
    const model = modelOf('runs/hand/') as RunModel;
    expect([model.logs, model.channels, model.plots]).toEqual([[], [], []]);
    expect(model.readings).toMatchObject([
      { what: 'current', value: '1.84 A', times: 1, phase: 'load', at: 'board input' },
      { what: 'temperature (settled)', value: '61.2 °C, 61.4 °C, 61.3 °C', times: 3 },
    ]);
    const shown = model.groups.flatMap(({ figures }) => figures);
    const at = (address: string) => shown.find((figure) => figure.address === address)!;
    expect(at('load_power').shown).toMatch(/^9\.2\d?\sW$/);
    expect(at('load_power').detail).toContain('read off a display once');
    expect(at('temperature_rise').shown).toMatch(/^39\sK$/);
    expect(at('score.mix').shown).toContain('101');
    expect(at('peak_power').absent).toBe('The run has no log, and no reading gives it.');
    expect(model.data.files.map(({ role }) => role)).toEqual(['scores', 'description', 'figures']);
  });

  test('stands in a comparison, where nothing is told of two displays one step apart, whose accuracy is not stated', () => {
    const json = JSON.parse(bytesAt(root, site, 'comparisons/hands/figures.json').toString()) as {
      figures: Record<string, { value: number; of: { verdict: string } }>;
    };
    expect(json.figures['power_delta.second']).toMatchObject({ of: { verdict: 'cannot be told' } });
    expect(json.figures['power_delta.second']!.value).toBeCloseTo(0.1, 12);
  });
});

describe('compute: what others published', () => {
  test('stands in words and tables marked as quoted, with its source; without an uncertainty nothing is concluded from it', () => {
    const { pieces, heldNotes, quoted } = modelOf('notes/clocks/') as NoteModel;
    const html = pieces.filter((piece) => typeof piece === 'string').join('');
    expect(html).toMatch(/63\s°C \(quoted from R\. Fern, 2024\)/);
    expect(html).toMatch(/9\.5\d?\sW.{0,80}quoted from R\. Fern, 2024/);
    const claim = heldNotes.find(({ expression }) => expression.includes('<'))!;
    expect(claim.rests).toMatch(/uncertainty unknown: this data cannot tell/);
    const source = heldNotes.find(({ expression }) => expression === 'older.steady_temperature')!.figures[0]!;
    expect(source).toMatchObject({ file: 'https://articles.example/boxes', uncertainty: 'the source states no uncertainty' });
    expect(source.from).toBe('accessed 2026-03-01; Invented device, another specimen; ambient about 24 °C');
    expect(quoted).toMatchObject([{ title: 'Hot little boxes', author: 'R. Fern', accessed: '2026-03-01' }]);
  });

  test('stands beside a comparison: a verdict where the source states an uncertainty, else the reason for none', () => {
    const { quoted } = modelOf('comparisons/hands/') as ComparisonModel;
    expect(quoted.map(({ label, cells }) => [label, cells.map(({ verdict }) => verdict)])).toEqual([
      ['load power', ['no verdict: the own figure is repeatability only', 'no verdict: the own figure is repeatability only']],
      ['steady temperature', ['no verdict: the source states no uncertainty', 'no verdict: the source states no uncertainty']],
    ]);
  });
});
