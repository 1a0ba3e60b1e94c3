/** What the models of pages are built from: everything that stage 1 has computed. */
import type { Figure, FigureMap, RunFigures } from '../../figures/figure.ts';
import type { Ladder } from '../../figures/stability/ladder.ts';
import type { TableLayout } from '../../figures/table-layout.ts';
import type { RunSeries } from '../../plots/data/series.ts';
import type { Attempts, Comparison, Note, Register, Run } from '../../register/register.ts';
import type { Correction } from '../../register/sealed/published-states.ts';
import type { Plan } from '../../words/script/plan.ts';
import type { Written } from '../../words/written.ts';
import type { OfferedData } from '../models/data-file.ts';
import type { Gathered } from '../models/gathered.ts';
import type { SiteFacts } from '../project/site-facts.ts';
import type { ComparisonModel, PagePlot } from '../results.ts';
import type { Picture } from '../steps/pictures/pictures.ts';
import type { PlotResult } from '../steps/plots/plot-task.ts';
import type { LogData } from '../steps/runs/run-data.ts';
import type { RunSummary } from '../steps/runs/run-step.ts';
import type { ReadTable } from '../steps/runs/run-tables.ts';
import type { SiteMemo } from '../store/memo.ts';

/** A picture for links to a page: the blob of its PNG, and what is to be seen. */
export interface DrawnShare {
  readonly png: string;
  readonly alt: string;
}

export interface ComputedRun {
  readonly run: Run;
  /** Of its figures: covers the log, the tables beside it, and what is declared of them. */
  readonly key: string;
  readonly derived: RunFigures;
  readonly summary: RunSummary;
  /** What goes out of each log. */
  readonly data: readonly LogData[];
  /** Tables read beside the log. */
  readonly tables: readonly ReadTable[];
  readonly plots: readonly PlotResult[];
  /** Blob of its `series.json`, and the series read. */
  readonly seriesText: string;
  readonly series: () => RunSeries;
  /** Mean over its load; null where no ambient is measured or stated. */
  readonly ambient: Figure | null;
}

/** A comparison that published notes reach. */
export interface ComputedComparison {
  readonly comparison: Comparison;
  readonly figures: FigureMap;
  /** Blob of what was gathered of it, as canonical JSON; and the same read. */
  readonly record: string;
  readonly gathered: () => Gathered;
  /** Its page, but for what hangs on the rest of the site. */
  readonly own: ComparisonModel;
  readonly plots: readonly PlotResult[];
}

/** Attempts that published notes reach. */
export interface ComputedAttempts {
  readonly attempts: Attempts;
  readonly ladder: Ladder;
  readonly figures: FigureMap;
  readonly sha256: string;
  readonly bytes: number;
  readonly form: TableLayout;
  /** Null where it could not be drawn. */
  readonly plot: PlotResult | null;
}

/** A picture of a note. */
export interface ShownPicture extends Picture {
  /** Path of its author's file below data/. */
  readonly path: string;
  /** How many stand side by side with it, itself among them. */
  readonly beside: number;
}

export interface ComputedNote {
  readonly note: Note;
  readonly written: Written;
  /** By index of the request; null where it could not be drawn. */
  readonly plots: readonly (PlotResult | null)[];
  /** By index of the request; null where it could not be made. */
  readonly pictures: readonly (ShownPicture | null)[];
  /** Run ids that it reaches, in its own order. */
  readonly reaches: readonly string[];
  /** Of a script: when what is said. */
  readonly plan?: Plan;
}

/** What goes into the site: already cut down to what published notes reach. */
export interface SiteContents {
  readonly register: Register;
  readonly runs: ReadonlyMap<string, ComputedRun>;
  readonly comparisons: ReadonlyMap<string, ComputedComparison>;
  readonly attempts: ReadonlyMap<string, ComputedAttempts>;
  readonly notes: readonly ComputedNote[];
  /** Files of data of runs and attempts. */
  readonly data: OfferedData;
  readonly memo: SiteMemo;
  /** HTML of the authors' own words about runs, devices and comparisons, by file. */
  readonly prose: ReadonlyMap<string, string>;
  /** What published notes reach: the rest shows in dev alone, and is marked. */
  readonly published: Readonly<Record<'runs' | 'devices' | 'comparisons', ReadonlySet<string>>>;
  /** Pictures for links to pages, by the paths of these. */
  readonly shares: ReadonlyMap<string, DrawnShare>;
  /** What the site says of itself. */
  /** The page about the publication: its title, and its author's words as HTML; null where there is none. */
  readonly about: { readonly title: string; readonly html: string } | null;
  readonly site: SiteFacts;
  /** Of published notes and scripts by `notes/<slug>`, newest first. */
  readonly corrections: ReadonlyMap<string, readonly Correction[]>;
  /** Ids of plots that are drawn otherwise than when their note or script was published, by `notes/<slug>`. */
  readonly redrawn: ReadonlyMap<string, ReadonlySet<string>>;
}

/** A drawn plot on the page at `path`, with its downloads beside it. */
export function pagePlot(drawn: PlotResult, path: string): PagePlot {
  const { id, title, about, along, alt, method, inline, table, files } = drawn;
  const file = (extension: string) => `${path}plots/${id}.${extension}`;
  return {
    id,
    title,
    ...(about === undefined ? {} : { about }),
    ...(along === undefined ? {} : { along }),
    alt,
    method,
    inline,
    table,
    files: { svg: file('svg'), ...(files.png !== undefined && { png: file('png') }), csv: file('csv') },
  };
}

/** Attempts stand on the page of their device. */
export function attemptsPath(attempts: Attempts): string {
  return `devices/${attempts.device}/`;
}

/** The page of a comparison; its figures stand beside it. */
export function comparisonPath(id: string): string {
  return `comparisons/${id}/`;
}
