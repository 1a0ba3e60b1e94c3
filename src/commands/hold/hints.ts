/** Words that people use around a number, by the figure or fact that they mean: beginnings of words, in lower case. */
import { definitionOf } from '../../figures/catalogue.ts';
import { CONDITIONS, isConditionName } from '../../register/values/condition-kinds.ts';

interface Hint {
  readonly spoken: string;
  readonly prior?: number;
}

/** Settings and ratings. Figures have theirs in the catalogue, conditions where they are defined. */
const FACTS: Readonly<Record<string, Hint>> = {
  'setting.clock': { spoken: 'setting set clock clocked asked label configured ran runs', prior: 1.2 },
  'setting.voltage_offset': { spoken: 'offset voltage added more core extra undervolt' },
  'device.rated_clock': { spoken: 'rated rating sold maker specified official box stock', prior: 0.3 },
  'device.throttle_at': { spoken: 'limit throttl governor steps threshold', prior: 0.3 },
  'device.supply': { spoken: 'supply rated adapter' },
  repeats: { spoken: 'repeat repeats repeated' },
  tried: { spoken: 'tried tries attempts settings combinations' },
  outcome: { spoken: 'tried attempts' },
};

function hintOf(name: string): Hint | undefined {
  if (isConditionName(name)) return CONDITIONS[name];
  return definitionOf(name) ?? (Object.hasOwn(FACTS, name) ? FACTS[name] : undefined);
}

/** The words for a figure's name or a fact's address; those of the name itself too. */
export function hintsOf(name: string): readonly string[] {
  const spoken = hintOf(name)?.spoken.split(' ') ?? [];
  return [...new Set([...spoken, ...name.split(/[^a-z]+/)])].filter((word) => word !== '');
}

/** How ready people are to mean it where nothing else decides: above 0 what write-ups are about. */
export function priorOf(name: string): number {
  return hintOf(name)?.prior ?? 0;
}
