/** Definitions of the figures of surface readings. */
import { LIMITS } from './proofs.ts';
import { subject } from './subject.ts';

const NOT_READ = 'the run has no surface readings, or the spot has no row among them';
const UNREADABLE =
  'the surface is bare metal, or its emissivity is below 0.5, and no tape or paint is stated as a remedy: a camera then reads what it mirrors';

export const SURFACE = subject('surface', {
  surface: {
    label: 'surface temperature',
    unit: '°C',
    spoken: 'surface case lid camera hand',
    publishedChecks: ['infrared-data-sheet', 'infrared-camera', ...LIMITS],
    lists: [],
    definition:
      'Reading of a thermal camera at a named spot, or of the hottest pixel within a region of its image, corrected from the emissivity that was set in the camera to that of the surface, with the reflected temperature, by the radiation that a black surface gives off between 8 and 14 µm.',
    formula: String.raw`W(T_\mathrm{object}) = W(T_\mathrm{reflected}) + \frac{\varepsilon_\mathrm{set}}{\varepsilon}\left(W(T) - W(T_\mathrm{reflected})\right),\quad W(T) = \int_{8\,\mathrm{\mu m}}^{14\,\mathrm{\mu m}} M_\lambda(T)\,\mathrm{d}\lambda`,
    notCovered: [
      'What air, windows and dirt take away between the surface and the camera.',
      'A spot smaller than what the camera averages over.',
      'Whether the emissivity that is stated is that of the spot.',
    ],
    assumptions: [
      'The reflected temperature was set in the camera as it is stated.',
      'Air and windows between camera and surface took nothing away.',
      'The spot was larger than what the camera averages over.',
      'What a camera of another band would show is allowed for: the difference to all wavelengths (T⁴) counts as limits of error.',
      'Of a region: what its hottest pixel stands out by from the mean of itself and its neighbours counts as limits of error, for noise and for spots smaller than what the camera averages over.',
    ],
    absentWhen: [
      NOT_READ,
      UNREADABLE,
      'emissivity, emissivity set or reflected temperature is not stated',
      'what is stated is impossible: the surface would radiate less than nothing',
    ],
    source:
      'W. Minkina and S. Dudzik, Infrared Thermography: Errors and Uncertainties, 2009, as restated in the source of the R package Thermimage; Planck’s law',
    check:
      'the examples of Thermimage (23.31223 °C) and of a sensor’s data sheet (80.36331 °C, 9516495632.56 K⁴); T⁴ by hand to 4 decimals',
  },
  camera_reading: {
    label: 'camera reading',
    unit: '°C',
    spoken: 'surface case lid camera shows spot hand',
    publishedChecks: [],
    lists: [],
    uncounted: 'It is a reading as it stands, with what its instrument states.',
    definition:
      'What a thermal camera showed at a named spot, as it showed it: the table does not state the emissivity that was set, that of the surface, or the reflected temperature, so nothing is corrected.',
    formula: 'T',
    notCovered: [
      'The temperature of the surface: a surface that shines mirrors its surroundings, and may be tens of kelvins hotter than the camera shows.',
      'What air, windows and dirt take away between the surface and the camera.',
    ],
    assumptions: ['The table is of what the camera showed, with nothing added.'],
    absentWhen: [NOT_READ, 'the surface temperature can be told', 'the material is stated as bare metal'],
    source: 'common practice, no source',
    check: 'hand-picked rows',
  },
  surface_mean: {
    label: 'surface, mean',
    unit: '°C',
    spoken: 'mean average surface case lid camera region',
    publishedChecks: ['infrared-data-sheet', 'infrared-camera'],
    lists: [],
    definition:
      'Mean of all pixels within a region of a thermal image, each corrected as a spot is, from the emissivity that was set in the camera to that of the surface.',
    formula: String.raw`\overline{T} = \frac{1}{N} \sum_{i=1}^{N} T_i`,
    notCovered: [
      'Pixels of the region that show another material, or what stands in front of it.',
      'What air, windows and dirt take away between the surface and the camera.',
    ],
    assumptions: [
      'The whole region has the emissivity and the reflected temperature that its row states.',
      'Errors of the camera are the same in all pixels: nothing of them is averaged out.',
    ],
    absentWhen: ['the row names no region of a thermal image', 'the surface temperature of the region is absent'],
    source: 'common practice, no source; the correction as of the surface temperature',
    check: 'a simulated image of known temperatures',
  },
  surface_percentile_99: {
    label: 'surface, 99th percentile',
    unit: '°C',
    spoken: 'percentile 99th surface case lid camera region',
    publishedChecks: ['infrared-data-sheet', 'infrared-camera'],
    lists: [],
    definition:
      'Temperature that 99 % of the pixels within a region of a thermal image lie below (type 7 of Hyndman and Fan), corrected as a spot is.',
    formula: String.raw`T_{(h)},\quad h = 0.99\,(N - 1)`,
    notCovered: [
      'The hottest place itself: a hundredth of the region is hotter.',
      'Pixels of the region that show another material, or what stands in front of it.',
    ],
    assumptions: ['The whole region has the emissivity and the reflected temperature that its row states.'],
    absentWhen: ['the row names no region of a thermal image', 'the surface temperature of the region is absent'],
    source:
      'R. J. Hyndman and Y. Fan, The American Statistician 50(4), 1996, definition 7; the correction as of the surface temperature',
    check: 'a simulated image of known temperatures',
  },
  hottest_surface: {
    label: 'hottest surface',
    unit: '°C',
    spoken: 'hottest surface lid case spot camera touch warmest',
    publishedChecks: [],
    lists: ['side by side'],
    definition: 'Highest corrected temperature of all spots that were read, or of those on the part that the address names.',
    formula: String.raw`\max_{s}\, T_s`,
    notCovered: ['Places that were not among the spots.'],
    assumptions: ['The hottest place was among the spots: a camera’s picture was looked through for it.'],
    absentWhen: [NOT_READ, 'the temperature of one of the spots is not known: it may be the hottest'],
    source: 'common practice, no source',
    check: 'hand-picked rows',
  },
  touch_margin: {
    label: 'margin to the touch limit',
    unit: 'K',
    spoken: 'touch margin limit finger short spare past',
    publishedChecks: ['touch-limits'],
    lists: [],
    definition:
      'Published touch limit of the material and the contact time, less the temperature of the spot; below zero where the limit was passed. Of several materials the lowest limit counts. The limits mean an ambient of 25 °C: where the room of the run was colder, the surface is taken as warmer by the difference, as it would be in theirs. A warmer room is left as it is.',
    formula: String.raw`\Delta T = T_\mathrm{limit} - T_s`,
    notCovered: [
      'Safety: this is a comparison with published limits. A product is judged by a qualified test house, under local rules.',
      'Other specimens, longer loads and rooms that are warmer than the test.',
    ],
    assumptions: [
      'Held is over 1 min, held briefly 10 s to 1 min, touched briefly 1 s to 10 s, not touched under 1 s.',
      'The rise over ambient is the same in a room of 25 °C, to within a tenth of the difference between the rooms (limits).',
      'Metal under at least 0.3 mm of plastic may use the limit of plastic, which only a statement of plastic alone does here.',
      'This is a comparison and no safety assessment: a product is judged by a qualified test house, under local rules.',
    ],
    absentWhen: [
      'the temperature of the spot is absent',
      'nobody touches the spot, or for longer than 8 h',
      'the material is none of metal, glass or porcelain, plastic or rubber, wood',
      'the ambient is not known, or more than 10 K from 25 °C',
    ],
    source:
      'IEC 62368-1, touch temperature limits TS1 (Table 38 of the 2014 and later editions): metal and plastic as restated in public sources, glass, porcelain and wood from memory',
    check: 'the limits of metal and plastic as several public sources quote the table',
  },
});
