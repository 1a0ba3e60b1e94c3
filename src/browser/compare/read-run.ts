/** A run as it is published → what comparisons gather of a run: the same as stage 1 has. */

import { conditionRows } from '../../compute/contents/figure-text.ts';
import type { FiguresJson, GatheredRun } from '../../compute/models/gathered.ts';
import { type Json, readable } from '../../figures/json.ts';
import { isUnreadable, readFiguresJson, readRunJson, type Unreadable } from '../../figures/read-figures-json.ts';
import { readSeries } from '../../plots/data/read-series.ts';

export interface ReadRun {
  /** Its alias is its id. */
  readonly gathered: GatheredRun;
  /** Hz, where the run states one. */
  readonly clockSetting?: number;
}

/** Reads `figures.json` and `series.json` of a run. Never throws: a file that is not as it should be comes back as the reason in words. */
export function readRun(figuresText: string, seriesText: string): ReadRun | Unreadable {
  const published = readRunJson(figuresText);
  if (isUnreadable(published)) return within('figures.json', published);
  const about = readable(figuresText, aboutOf);
  if (isUnreadable(about)) return within('figures.json', about);
  const ambient = readFiguresJson(JSON.stringify({ format: 1, ...about.ambient }));
  if (isUnreadable(ambient)) return within('figures.json', ambient);
  const series = readSeries(seriesText);
  if (isUnreadable(series)) return within('series.json', series);
  const clock = published.setting.find(({ name }) => name === 'clock');
  return {
    gathered: {
      alias: published.run,
      run: published.run,
      ...about,
      specimen: published.specimen,
      setting: conditionRows(published.setting),
      conditions: conditionRows(published.conditions),
      ...(published.log && { log: published.log }),
      ...(published.other_logs && { other_logs: published.other_logs }),
      series,
    },
    ...(clock?.unit === 'Hz' && clock.value !== undefined ? { clockSetting: clock.value } : {}),
  };
}

function within(file: string, { unreadable }: Unreadable): Unreadable {
  return { unreadable: `in its ${file} ${unreadable}` };
}

type About = Omit<GatheredRun, 'alias' | 'run' | 'specimen' | 'setting' | 'conditions' | 'log' | 'other_logs' | 'series'>;

function aboutOf(file: Json): About {
  const about = file.at('about');
  const device = about.at('device');
  return {
    title: about.at('title').text(),
    date: about.at('date').text(),
    device: {
      id: device.at('id').text(),
      title: device.at('title').text(),
      maker: device.at('maker').text(),
      invented: device.at('invented').flag(),
    },
    ambient: mapOf(about.at('ambient')),
    instruments: about
      .at('instruments')
      .list()
      .map((each) => textsOf(each, ['id', 'title', 'accuracy'])),
    channels: about
      .at('channels')
      .list()
      .map((each) => textsOf(each, ['name', 'quantity', 'at', 'instrument'])),
    cautions: about
      .at('cautions')
      .list()
      .map((each) => ({
        done: each
          .at('done')
          .list()
          .map((done) => done.text()),
        risk: each.at('risk').text(),
      })),
    tables: (file.maybe('tables')?.list() ?? []).map((each) => textsOf(each, ['file', 'sha256'])),
    ...mapOf(file),
  };
}

/** As published: `readPublishedRun` has looked at it. */
function mapOf(map: Json): FiguresJson {
  return { sources: map.at('sources').plain(), figures: map.at('figures').plain() };
}

function textsOf<K extends string>(each: Json, keys: readonly K[]): Record<K, string> {
  return Object.fromEntries(keys.map((key) => [key, each.at(key).text()])) as Record<K, string>;
}
