/** A log with the corrections of its instruments applied: what figures and plots are made from. */
import type { Channel, Inference, Log } from '../intake/log.ts';
import type { Correction, RunContext } from './context.ts';
import { correctionOf, instrumentOf } from './sources.ts';

/**
 * Adds to every reading what its instrument's correction states (JCGM 100:2008, 3.2.4: a known systematic effect is corrected),
 * and says so among the log's inferences. The same log where nothing is stated; the uncertainty comes with `errorsOf`.
 */
export function correctedLog(log: Log, context: RunContext): Log {
  const inferences: Inference[] = [];
  const channels = log.channels.map((channel) => {
    const correction = correctionOf(context, channel);
    if (!correction) return channel;
    inferences.push({ method: 'correction', statement: statementOf(context, channel, correction) });
    return { ...channel, values: channel.values.map((reading) => reading + correction.value) };
  });
  return inferences.length === 0 ? log : { ...log, channels, inferences: [...log.inferences, ...inferences] };
}

function statementOf(context: RunContext, channel: Channel, { text }: Correction): string {
  const by = instrumentOf(context, channel)?.title ?? channel.instrument;
  return `The readings of ${channel.name} by ${by} were corrected by ${text}, in figures and plots alike.`;
}
