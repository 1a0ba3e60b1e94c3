import { describe, expect, test } from 'vitest';
import { NARROW, WIDE } from '../../src/plots/size.ts';
import { specify } from '../../src/plots/specify.ts';
import { channel, exactly, logOf, request, subject } from './subjects.ts';

/** Five readings of one run: small enough to be read in a snapshot. */
function tiny() {
  const base = subject('rated', { load: 60, idle: 30, coolDown: 30 });
  const log = logOf([0, 30, 60, 90, 120], [channel('soc', 'temperature', '°C', [22, 22.5, 50, 61, 40], 0.1)], 30);
  return { ...base, log, context: { ...base.context, device: { id: 'larch-2', throttleAt: { soc: exactly(70, '°C') } } } };
}

describe('plots/specify', () => {
  test('the specification of a small trace', () => {
    const run = tiny();
    const { config, ...spec } = specify(request('trace', [run]), [run], WIDE).spec!;
    expect(config).toMatchObject({ aria: false, mark: { invalid: 'show' } });
    expect(spec).toMatchInlineSnapshot(`
      {
        "background": null,
        "bounds": "flush",
        "padding": {
          "bottom": 6,
          "left": 0,
          "right": 0,
          "top": 2,
        },
        "spacing": 38,
        "vconcat": [
          {
            "height": 300,
            "layer": [
              {
                "data": {
                  "values": [
                    {
                      "x": 163.75,
                      "x2": 491.25,
                      "y": 0,
                      "y2": 300,
                    },
                    {
                      "x": -19,
                      "x2": 701,
                      "y": 0,
                      "y2": 0,
                    },
                  ],
                },
                "encoding": {
                  "x": {
                    "axis": null,
                    "field": "x",
                    "scale": null,
                    "type": "quantitative",
                  },
                  "x2": {
                    "field": "x2",
                  },
                  "y": {
                    "axis": null,
                    "field": "y",
                    "scale": null,
                    "type": "quantitative",
                  },
                  "y2": {
                    "field": "y2",
                  },
                },
                "mark": {
                  "fill": "var(--plot-ink)",
                  "fillOpacity": 0.05,
                  "type": "rect",
                },
              },
              {
                "data": {
                  "format": {
                    "parse": null,
                  },
                  "values": [
                    {
                      "k": 0,
                      "s": 0,
                      "x": -30,
                      "y": 22,
                    },
                    {
                      "k": 0,
                      "s": 0,
                      "x": 0,
                      "y": 22.5,
                    },
                    {
                      "k": 0,
                      "s": 0,
                      "x": 30,
                      "y": 50,
                    },
                    {
                      "k": 0,
                      "s": 0,
                      "x": 60,
                      "y": 61,
                    },
                    {
                      "k": 0,
                      "s": 0,
                      "x": 90,
                      "y": 40,
                    },
                  ],
                },
                "encoding": {
                  "detail": {
                    "field": "s",
                    "type": "nominal",
                  },
                  "order": null,
                  "stroke": {
                    "field": "k",
                    "legend": null,
                    "scale": {
                      "domain": [
                        0,
                      ],
                      "range": [
                        "var(--plot-1)",
                      ],
                    },
                    "type": "nominal",
                  },
                  "strokeDash": {
                    "field": "k",
                    "legend": null,
                    "scale": {
                      "domain": [
                        0,
                      ],
                      "range": [
                        [
                          1,
                          0,
                        ],
                      ],
                    },
                    "type": "nominal",
                  },
                  "x": {
                    "axis": {
                      "format": ".0f",
                      "grid": false,
                      "labelFlush": false,
                      "labelOverlap": false,
                      "title": "Time since load start (s)",
                      "values": [
                        -30,
                        -15,
                        0,
                        15,
                        30,
                        45,
                        60,
                        75,
                        90,
                      ],
                    },
                    "field": "x",
                    "scale": {
                      "domain": [
                        -30,
                        90,
                      ],
                      "nice": false,
                      "zero": false,
                    },
                    "type": "quantitative",
                  },
                  "y": {
                    "axis": {
                      "domain": false,
                      "format": ".0f",
                      "grid": true,
                      "labelFlush": false,
                      "labelOverlap": false,
                      "ticks": false,
                      "title": null,
                      "values": [
                        20,
                        30,
                        40,
                        50,
                        60,
                        70,
                        80,
                      ],
                    },
                    "field": "y",
                    "scale": {
                      "domain": [
                        20,
                        80,
                      ],
                      "nice": false,
                      "zero": false,
                    },
                    "type": "quantitative",
                  },
                },
                "mark": {
                  "strokeJoin": "round",
                  "strokeWidth": 1.75,
                  "type": "line",
                },
              },
              {
                "data": {
                  "values": [
                    {
                      "dash": [
                        1,
                        0,
                      ],
                      "stroke": "var(--plot-soft)",
                      "width": 1,
                      "x": 1,
                      "x2": 162.75,
                      "y": -3.5,
                      "y2": -3.5,
                    },
                    {
                      "dash": [
                        1,
                        0,
                      ],
                      "stroke": "var(--plot-soft)",
                      "width": 1,
                      "x": 164.75,
                      "x2": 490.25,
                      "y": -3.5,
                      "y2": -3.5,
                    },
                    {
                      "dash": [
                        1,
                        0,
                      ],
                      "stroke": "var(--plot-soft)",
                      "width": 1,
                      "x": 492.25,
                      "x2": 654,
                      "y": -3.5,
                      "y2": -3.5,
                    },
                    {
                      "dash": [
                        2,
                        3,
                      ],
                      "stroke": "var(--plot-limit)",
                      "width": 1.25,
                      "x": 0,
                      "x2": 655,
                      "y": 49.999999999999986,
                      "y2": 49.999999999999986,
                    },
                  ],
                },
                "encoding": {
                  "stroke": {
                    "field": "stroke",
                    "legend": null,
                    "scale": null,
                    "type": "nominal",
                  },
                  "x": {
                    "axis": null,
                    "field": "x",
                    "scale": null,
                    "type": "quantitative",
                  },
                  "x2": {
                    "field": "x2",
                  },
                  "y": {
                    "axis": null,
                    "field": "y",
                    "scale": null,
                    "type": "quantitative",
                  },
                  "y2": {
                    "field": "y2",
                  },
                },
                "mark": {
                  "strokeDash": {
                    "expr": "datum.dash",
                  },
                  "strokeWidth": {
                    "expr": "datum.width",
                  },
                  "type": "rule",
                },
              },
              {
                "data": {
                  "format": {
                    "parse": null,
                  },
                  "values": [],
                },
                "encoding": {
                  "shape": {
                    "field": "k",
                    "legend": null,
                    "scale": {
                      "domain": [
                        0,
                      ],
                      "range": [
                        "circle",
                      ],
                    },
                    "type": "nominal",
                  },
                  "stroke": {
                    "field": "k",
                    "legend": null,
                    "scale": {
                      "domain": [
                        0,
                      ],
                      "range": [
                        "var(--plot-1)",
                      ],
                    },
                    "type": "nominal",
                  },
                  "x": {
                    "axis": {
                      "format": ".0f",
                      "grid": false,
                      "labelFlush": false,
                      "labelOverlap": false,
                      "title": "Time since load start (s)",
                      "values": [
                        -30,
                        -15,
                        0,
                        15,
                        30,
                        45,
                        60,
                        75,
                        90,
                      ],
                    },
                    "field": "x",
                    "scale": {
                      "domain": [
                        -30,
                        90,
                      ],
                      "nice": false,
                      "zero": false,
                    },
                    "type": "quantitative",
                  },
                  "y": {
                    "axis": {
                      "domain": false,
                      "format": ".0f",
                      "grid": true,
                      "labelFlush": false,
                      "labelOverlap": false,
                      "ticks": false,
                      "title": null,
                      "values": [
                        20,
                        30,
                        40,
                        50,
                        60,
                        70,
                        80,
                      ],
                    },
                    "field": "y",
                    "scale": {
                      "domain": [
                        20,
                        80,
                      ],
                      "nice": false,
                      "zero": false,
                    },
                    "type": "quantitative",
                  },
                },
                "mark": {
                  "fill": "var(--plot-paper)",
                  "fillOpacity": 1,
                  "size": 34,
                  "strokeWidth": 1.5,
                  "type": "point",
                },
              },
              {
                "data": {
                  "values": [
                    {
                      "align": "left",
                      "fill": "var(--plot-ink)",
                      "size": 14,
                      "text": "Temperature (°C)",
                      "x": -19,
                      "y": -33,
                    },
                    {
                      "align": "center",
                      "fill": "var(--plot-soft)",
                      "size": 13,
                      "text": "idle",
                      "x": 81.875,
                      "y": -12.8,
                    },
                    {
                      "align": "center",
                      "fill": "var(--plot-soft)",
                      "size": 13,
                      "text": "load",
                      "x": 327.5,
                      "y": -12.8,
                    },
                    {
                      "align": "center",
                      "fill": "var(--plot-soft)",
                      "size": 13,
                      "text": "cool-down",
                      "x": 573.125,
                      "y": -12.8,
                    },
                    {
                      "align": "left",
                      "fill": "var(--plot-limit)",
                      "size": 13,
                      "text": "throttle limit 70 °C",
                      "x": 552.096,
                      "y": 41.54999999999998,
                    },
                    {
                      "align": "left",
                      "fill": "var(--plot-1)",
                      "size": 14,
                      "text": "rated",
                      "x": 667,
                      "y": 200.00000000000003,
                    },
                  ],
                },
                "encoding": {
                  "fill": {
                    "field": "fill",
                    "legend": null,
                    "scale": null,
                    "type": "nominal",
                  },
                  "text": {
                    "field": "text",
                  },
                  "x": {
                    "axis": null,
                    "field": "x",
                    "scale": null,
                    "type": "quantitative",
                  },
                  "y": {
                    "axis": null,
                    "field": "y",
                    "scale": null,
                    "type": "quantitative",
                  },
                },
                "mark": {
                  "align": {
                    "expr": "datum.align",
                  },
                  "baseline": "middle",
                  "fontSize": {
                    "expr": "datum.size",
                  },
                  "lineHeight": {
                    "expr": "datum.size + 1",
                  },
                  "type": "text",
                },
              },
            ],
            "width": 655,
          },
        ],
      }
    `);
  });

  test('a narrow drawing has its own width, fewer ticks and fewer points', () => {
    const run = subject('rated', { step: 1 });
    const size = (which: typeof WIDE) => JSON.stringify(specify(request('trace', [run]), [run], which).spec).length;
    expect(size(NARROW)).toBeLessThan(size(WIDE));
  });

  test('a request with errors has no specification', () => {
    const run = tiny();
    expect(specify(request('trace', [run], ['nope']), [run], WIDE).spec).toBeNull();
  });
});
