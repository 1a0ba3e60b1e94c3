/** What is drawn of one run: `runs/<id>/series.json`, and part of a record copy, where it is described. */
import type { RecordedSeries } from '../../register/sealed/recorded-comparison.ts';

export type RunSeries = RecordedSeries;
export type SeriesChannel = RunSeries['channels'][number];
export type SeriesPoints = Pick<SeriesChannel, 't' | 'y' | 'breaks'>;
export type SeriesLine = SeriesPoints & Pick<SeriesChannel, 'means'>;
export type SeriesMeans = NonNullable<SeriesChannel['means']>;
