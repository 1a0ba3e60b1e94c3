/** What a note says of its published words: numbers that print differently now, each with a reason, and addresses where it once stood. */
import { mapsOf } from './mapping.ts';
import type { ListNode, MapNode, TextNode } from './node.ts';
import type { EarlierAddress, StatedCorrection } from './register.ts';
import type { Report } from './report.ts';
import { readShape, shape, text } from './shape.ts';
import type { SourceFile } from './source-file.ts';
import { cut, dateOf, lineOf, textsOf } from './values.ts';

const CORRECTION = shape({ number: text, now: text, since: text, reason: text });

/** The corrections, in the author's order. */
export function readCorrections(list: ListNode | undefined, source: SourceFile, report: Report): StatedCorrection[] {
  return mapsOf(list, 'corrections', source.placeOf('corrections'), report).flatMap((node) => {
    const correction = report.whole(() => correctionOf(node, report));
    return correction ? [correction] : [];
  });
}

function correctionOf(node: MapNode, report: Report): StatedCorrection {
  const fields = readShape(CORRECTION, node, 'a correction', node.place, report);
  return {
    number: lineOf(fields.number, 'number', report) ?? '',
    now: lineOf(fields.now, 'now', report) ?? '',
    since: dateOf(fields.since, 'since', report) ?? '',
    reason: lineOf(fields.reason, 'reason', report) ?? '',
    place: node.place,
  };
}

const ADDRESS = /^(?:notes|scripts)\/[a-z0-9-]+\/(?:plots\/[a-z0-9-]+(?:\.(?:svg|png|csv))?)?$/;

/** The addresses below the site's base at which something of this note stood, in the author's order. */
export function readWas(node: TextNode | ListNode | undefined, source: SourceFile, report: Report): EarlierAddress[] {
  return (textsOf(node, 'was', source.placeOf('was'), report) ?? []).flatMap(({ text: address, place }) => {
    if (ADDRESS.test(address)) return [{ address, place }];
    report.error('bad-address', place, `\`was\` names \`${cut(address)}\``, {
      expected: 'an address of this site, without what stands before it: `notes/old-name/` or `notes/name/plots/trace.svg`',
    });
    return [];
  });
}
