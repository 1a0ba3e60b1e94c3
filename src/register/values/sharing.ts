/** How a log goes out: what stands below `log` about it. */
import type { Place } from '../../problem.ts';
import type { DataFiles } from '../register.ts';
import { SHARES, type Share, type Sharing } from '../register.ts';
import type { TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { httpsOf } from './address.ts';
import { dataPathOf } from './data-path.ts';
import { wordOf } from './values.ts';

export interface SharingFields {
  readonly file?: TextNode | undefined;
  readonly share?: TextNode | undefined;
  readonly redacted?: TextNode | undefined;
  readonly elsewhere?: TextNode | undefined;
}

/** One of the words that say how much of a log goes out. */
export function shareOf(node: TextNode | undefined, report: Report): Share | undefined {
  return wordOf(node, 'share', SHARES, report);
}

/** What a run states of its log; keys that exclude each other are a problem at the second of them. */
export function readSharing(fields: SharingFields, data: DataFiles, report: Report): Sharing {
  const share = shareOf(fields.share, report);
  const file = dataPathOf(fields.redacted, 'redacted', data, report);
  const elsewhere = httpsOf(fields.elsewhere, 'elsewhere', report);
  const { redacted } = fields;
  if (redacted && fields.file?.text === redacted.text) tell(redacted.place, '`redacted` names the log itself', report);
  else if (redacted && fields.share) tell(redacted.place, '`redacted` stands beside `share`', report);
  else if (redacted && fields.elsewhere) tell(redacted.place, '`redacted` stands beside `elsewhere`', report);
  else if (fields.elsewhere && share === 'as it came')
    tell(fields.elsewhere.place, '`elsewhere` stands beside `share: as it came`', report);
  return {
    ...(share === undefined ? {} : { share }),
    ...(file === undefined ? {} : { redacted: { file, place: redacted!.place } }),
    ...(elsewhere === undefined ? {} : { elsewhere }),
  };
}

function tell(place: Place, found: string, report: Report): void {
  report.error('bad-sharing', place, found, {
    expected: 'one way out: the log as it came, a second file that you redacted, or an address elsewhere',
    remedy: 'keep one of the two keys',
  });
}
