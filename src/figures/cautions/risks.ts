/** What each caution says of the risk and of whom to ask: the same sentences for every run that calls for it. */

const NOT_ADVICE = 'What one specimen stood is no advice for another.';

export const RISKS = {
  'raised-voltage': `A raised voltage can damage or age the device for good, overheat it, end its warranty and lose data. ${NOT_ADVICE}`,
  'clock-above-rating': `A clock above the rating can damage the device, end its warranty, give wrong results and lose data. ${NOT_ADVICE} Keep a backup.`,
  'held-at-limit':
    'Held at its limit a device ages faster, may restart and lose data, and surfaces near it can burn skin. Let it cool before touching it.',
  'hot-surface':
    'A surface past a touch limit can burn skin, sooner when it is metal or is held. Keep hands, children and anything that burns away, and let it cool before touching it. Whether a product is safe to touch is for a qualified test house to say, under the rules where you live.',
  'mains-side':
    'Mains voltage can kill by shock and start a fire: use only meters made and rated for it, never open one or a supply under voltage, and leave wiring to licensed people under the local electrical code.',
  battery:
    'Heat and sustained load can make a lithium cell swell, vent or catch fire: watch it, keep it off flammable ground, stop when it swells or smells, and dispose of cells as local rules say.',
  'long-soak':
    'A device under sustained load is a fire and burn hazard: do not leave it alone, keep it on ground that does not burn with its air free, and follow local fire rules.',
} as const;

/** Each in a few words, for one line of a page. */
export const RISKS_IN_BRIEF: Readonly<Record<keyof typeof RISKS, string>> = {
  'raised-voltage': 'raised voltage',
  'clock-above-rating': 'a clock above the rating',
  'held-at-limit': 'held at its temperature limit',
  'hot-surface': 'hot surfaces',
  'mains-side': 'mains voltage',
  battery: 'a battery under load',
  'long-soak': 'a long load',
};

/** A risk's sentence in a few words; undefined for one that an older record copy words otherwise. */
export function riskInBrief(risk: string): string | undefined {
  const id = CAUTION_ORDER.find((each) => RISKS[each] === risk);
  return id && RISKS_IN_BRIEF[id];
}

export type CautionId = keyof typeof RISKS;

/** The order in which cautions stand. */
export const CAUTION_ORDER = Object.keys(RISKS) as readonly CautionId[];
