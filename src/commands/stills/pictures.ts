/** What a script shows → its pictures in order, each with the name of its file. */
import type { PicturedThing, ShownPlot, StillsModel } from '../../compute/models/stills.ts';
import type { StillDrawing } from '../../plots/drawing/drawn.ts';
import { stepsOf } from '../../plots/stills/build-up.ts';
import { captionStrip } from '../../plots/stills/caption-strip.ts';
import { type Picture, scaleIn } from '../../plots/stills/compose.ts';
import { LEAST_ON_PHONE, PHONE_WIDTH, roomBelow, SMALL_SIZE, WIDTH } from '../../plots/stills/format.ts';
import { numberCard } from '../../plots/stills/number-card.ts';
import { tableDrawings } from '../../plots/stills/table-body.ts';
import { type Problem, warning } from '../../problem.ts';
import { clockTime } from '../../words/script/timeline.ts';
import { freeNames, shortened, stepName } from './names.ts';

export interface NamedPicture extends Picture {
  /** Without its extension. */
  readonly name: string;
  /** What is to be seen, in words. */
  readonly alt: string;
}

export interface Pictures {
  readonly pictures: readonly NamedPicture[];
  readonly problems: readonly Problem[];
}

/** All pictures of a script. `file` is the script's, for messages; `svgOf` reads a drawing of the store. */
export function picturesOf({ foot, pictures }: StillsModel, file: string, svgOf: (blob: string) => string): Pictures {
  const taken = new Set<string>();
  const problems: Problem[] = [];
  const drawn = pictures.flatMap((thing) => {
    const parts = partsOf(thing, svgOf);
    problems.push(...parts.flatMap((part) => tooSmall(part, thing, file)));
    const unnamed = parts.flatMap((part, at) => stepsOfPart(part, parts.length > 1 ? `-part-${at + 1}` : '', thing, foot));
    const endings = unnamed.map(({ ending }) => ending);
    const names = freeNames(shortened(baseName(thing)), endings, taken);
    return unnamed.map(({ ending: _, ...picture }, i): NamedPicture => ({ ...picture, name: names[i]! }));
  });
  return { pictures: drawn, problems };
}

/** "02-0m15s-trace-soc-rated-fast": in the order of the script, then by time. */
function baseName({ cue, at, name }: PicturedThing): string {
  if (cue === null) return `highlight-${name}`;
  return `${String(cue).padStart(2, '0')}-${fileTime(at)}-${name}`;
}

/** "0m15s", "1h02m05s": a colon stands in no name of a file on Windows. */
function fileTime(seconds: number): string {
  const parts = clockTime(seconds).split(':');
  const units = ['h', 'm', 's'].slice(-parts.length);
  return parts.map((part, i) => `${part}${units[i]}`).join('');
}

function partsOf({ shows }: PicturedThing, svgOf: (blob: string) => string): StillDrawing[] {
  switch (shows.kind) {
    case 'plot':
      return drawingsOf(shows, svgOf);
    case 'table':
      return tableDrawings(shows, roomBelow(shows.caption));
    case 'number': {
      const alt = [`${shows.what}: ${shows.shown}`, shows.uncertainty, shows.of].filter((part) => part !== '').join(', ');
      return [{ title: shows.what, alt, shown: [], svg: numberCard(shows) }];
    }
    case 'words':
      return [{ title: '', alt: shows.text, shown: [], svg: captionStrip(shows.text, roomBelow('')) }];
  }
}

function drawingsOf({ stills }: ShownPlot, svgOf: (blob: string) => string): StillDrawing[] {
  return stills.map((still) => ({ ...still, svg: svgOf(still.svg) }));
}

/** The steps of a build-up, the last of which is the whole picture, each with the end of its name. */
function stepsOfPart(
  { title, alt, svg, shown }: StillDrawing,
  part: string,
  { shows }: PicturedThing,
  foot: Picture['foot'],
): (Omit<NamedPicture, 'name'> & { readonly ending: string })[] {
  const steps = stepsOf(svg, shown, shows.kind === 'table' ? 'rows' : 'axes');
  const digits = String(steps.length - 1).length;
  return steps.map((step, at) => ({
    ending: steps.length === 1 ? part : `${part}-${String(at).padStart(digits, '0')}-${stepName(step.name)}`,
    title,
    body: step.svg,
    foot,
    alt,
  }));
}

/** A drawing that had to be made smaller than its type allows. */
function tooSmall({ title, svg }: StillDrawing, { line, column, name }: PicturedThing, file: string): Problem[] {
  const onPhone = (SMALL_SIZE * scaleIn(svg, roomBelow(title)) * PHONE_WIDTH) / WIDTH;
  if (onPhone >= LEAST_ON_PHONE - 0.05) return [];
  const found = `the picture \`${name}\` is too full: its letters would be ${onPhone.toFixed(1)} px high on a phone (${PHONE_WIDTH} px wide)`;
  return [
    warning('still-type', { file, line, column }, found, {
      expected: `at least ${LEAST_ON_PHONE} px`,
      remedy: 'show fewer runs at once, in two cues',
    }),
  ];
}
