/** What thermal images say in words and in tables. */
import { type Figure, isPresent, type PresentFigure } from '../../figures/figure.ts';
import { listed } from '../../figures/in-words.ts';
import { printQuantity, printUncertainty } from '../../quantities/print.ts';
import { csv } from '../drawing/csv.ts';
import type { Drawn } from '../drawing/drawn.ts';
import { fixed } from '../drawing/wording.ts';
import type { Image, Place, Thermal } from './plan.ts';

/** The hottest place of each image: "The hottest place in the thermal image: rated 58.3 °C, fast 65.1 °C". */
export function thermalTitle({ images }: Thermal): string {
  const told = images.flatMap((image) => {
    const place = hottestOf(image);
    return place ? [{ alias: image.alias, title: place.title, shown: shownOf(place.surface) }] : [];
  });
  const runs = images.map(({ alias }) => alias).filter((alias) => alias !== '');
  if (told.length < images.length) return runs.length > 0 ? `Thermal images of ${listed(runs)}` : 'Thermal image';
  const same = told.every(({ title }) => title === told[0]!.title);
  const where = same ? `${told[0]!.title}, hottest of the thermal image` : 'Hottest in the thermal image';
  return `${where}: ${listed(told.map(({ alias, title, shown }) => [alias, same ? '' : title, shown].filter((text) => text !== '').join(' ')))}`;
}

function hottestOf({ places }: Image): (Place & { readonly surface: PresentFigure }) | undefined {
  const known = places.filter((place): place is Place & { surface: PresentFigure } => isPresent(place.surface));
  return known.reduce<(typeof known)[number] | undefined>(
    (most, place) => (most === undefined || place.surface.quantity.value > most.surface.quantity.value ? place : most),
    undefined,
  );
}

/** As words print it; what is wrong where it is absent. */
export function shownOf(figure: Figure | undefined): string {
  if (!figure) return '';
  return isPresent(figure) ? printQuantity(figure.quantity).text : 'absent';
}

export function thermalAlt({ images, coldest, hottest }: Thermal): string {
  const told = images.map(({ alias, places }) => {
    const words = places.map((place) => `${place.title} ${shownOf(place.surface)}${limitWords(place)}`);
    return `${alias === '' ? 'Thermal image' : alias}: ${words.length === 0 ? 'no named place' : words.join(', ')}`;
  });
  return `${told.join('. ')}. Colours run from ${fixed(coldest, 1)} °C, dark, to ${fixed(hottest, 1)} °C, light.`;
}

function limitWords({ margin }: Place): string {
  if (!margin || !isPresent(margin)) return '';
  const { quantity } = margin;
  const size = printQuantity({ ...quantity, value: Math.abs(quantity.value) }).text;
  return `, ${size} ${quantity.value < 0 ? 'above' : 'below'} its touch limit`;
}

export function thermalMethod({ images }: Thermal): string {
  const limits = images.some(({ places }) => places.some(({ isotherm }) => isotherm.length > 0));
  const regions = images.some(({ places }) => places.some(({ box }) => box !== null));
  return [
    `${images.length > 1 ? 'All images have one scale of colours. Colours' : 'Colours'} show what the camera reads, at the emissivity that was set in it; printed temperatures are corrected to the emissivity of the surface.`,
    ...(regions ? ['A dashed frame is a region, marked at its hottest pixel.'] : []),
    ...(limits ? ['The solid line within a frame runs where the corrected surface is at its published touch limit.'] : []),
  ].join(' ');
}

const FIGURES = ['surface', 'mean', 'percentile', 'margin'] as const;

export function thermalTable({ images }: Thermal): Drawn['table'] {
  return {
    caption: 'Temperatures in the thermal images, corrected',
    head: ['Run', 'Place', 'Hottest or spot', 'Uncertainty', 'Mean', '99th percentile', 'Margin to the touch limit'],
    rows: images.flatMap(({ alias, places }) =>
      places.map((place) => [
        alias,
        place.title,
        shownOf(place.surface),
        isPresent(place.surface) ? printUncertainty(place.surface.quantity) : '',
        shownOf(place.mean),
        shownOf(place.percentile),
        shownOf(place.margin),
      ]),
    ),
  };
}

export function thermalCsv({ images }: Thermal): string {
  const celsius = (figure: Figure | undefined) => (figure && isPresent(figure) ? figure.quantity.value : '');
  const rows = images.flatMap(({ alias, places }) =>
    places.map((place) => [alias, place.id, place.at.x * 100, place.at.y * 100, ...FIGURES.map((name) => celsius(place[name]))]),
  );
  const head = [
    'run',
    'place',
    'from_left_percent',
    'from_top_percent',
    'surface_celsius',
    'mean_celsius',
    'percentile_99_celsius',
  ];
  return csv([[...head, 'touch_margin_kelvin'], ...rows]);
}
