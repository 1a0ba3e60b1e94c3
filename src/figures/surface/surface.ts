/** All figures of a run's surface readings. */

import type { Quantity } from '../../quantities/quantity.ts';
import { absent, isReason, type Reason } from '../absent.ts';
import { type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { ambientOver } from '../thermal/ambient.ts';
import { hottestSurface } from './hottest.ts';
import { regionFigures } from './region.ts';
import { cameraReading, surfaceFigure } from './spot.ts';
import type { Surface } from './surface-table.ts';
import { touchMargin } from './touch.ts';

/** `surface.<spot>` and `touch_margin.<spot>` of each spot, `camera_reading.<spot>` where it cannot be corrected, mean and 99th percentile of regions, `hottest_surface` of all and of each part; absent without readings. */
export function surfaceFigures(soak: Soak, surface: Surface | undefined): Entry[] {
  if (surface === undefined || surface.readings.length === 0) {
    const why = surface === undefined ? 'The run has no surface readings.' : 'No row of the surface readings could be used.';
    return [['hottest_surface', absent('hottest_surface', { absent: 'no-readings', why })]];
  }
  const ambient = ambientOf(soak);
  const spots = surface.readings.map((reading) => ({ reading, figure: surfaceFigure(soak, surface, reading) }));
  const parts = [...new Set(surface.readings.map(({ part }) => part.id))].filter((part) => part !== '');
  return [
    ...spots.map(({ reading, figure }): Entry => [`surface.${reading.spot}`, figure]),
    ...surface.readings.flatMap((reading): Entry[] => {
      const shown = cameraReading(soak, surface, reading);
      return shown === null ? [] : [[`camera_reading.${reading.spot}`, shown]];
    }),
    ...surface.readings.flatMap((reading) => regionFigures(soak, surface, reading)),
    ['hottest_surface', hottestSurface(surface, spots)],
    ...parts.map((part): Entry => {
      const own = spots.filter(({ reading }) => reading.part.id === part);
      return [`hottest_surface.${part}`, hottestSurface(surface, own)];
    }),
    ...spots.map(
      ({ reading, figure }): Entry => [`touch_margin.${reading.spot}`, touchMargin(reading, figure, ambient, soak.context.run)],
    ),
  ];
}

/** The ambient of the load, or of the whole log where there is no load phase. */
function ambientOf(soak: Soak): Quantity | Reason {
  const load = phaseOf(soak, 'load');
  const rows = load ? rowsOf(load) : { from: 0, to: soak.log.rows };
  const ambient = ambientOver(soak, rows, 'ambient.load');
  return isReason(ambient) ? ambient : ambient.quantity;
}
