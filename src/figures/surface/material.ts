/** What the words for a material say of it: which column of the touch limits, and whether bare metal mirrors its surroundings. */

export type MaterialClass = 'metal' | 'glass' | 'plastic' | 'wood';

const WORDS: Readonly<Record<MaterialClass, RegExp>> = {
  metal: /\b(?:metal|steel|stainless|alumini?um|alloy|brass|bronze|copper|zinc|magnesium|titanium|iron|nickel|tin)\b/i,
  glass: /\b(?:glass|porcelain|ceramic|ceramics|vitreous|enamel)\b/i,
  plastic: /\b(?:plastic|plastics|rubber|abs|polycarbonate|pvc|nylon|silicone|acrylic|polyamide|polypropylene|resin)\b/i,
  wood: /\b(?:wood|wooden|bamboo|plywood|cork)\b/i,
};

/** Words of a layer that radiates by itself: such metal does not mirror as bare metal does. */
const LAYER =
  /\b(?:anodi[sz]ed|painted|paint|lacquered|lacquer|varnished|coated|coating|powder|enamell?ed|oxidi[sz]ed|rusted|blackened|taped|plastic|rubber)\b/i;

/** Classes of the touch limits that a material's words name; several where it is made of several, none where it is none of them. */
export function materialClasses(words: string): MaterialClass[] {
  return (Object.keys(WORDS) as MaterialClass[]).filter((kind) => WORDS[kind].test(words));
}

/** Tells whether the words name metal without any layer on it. */
export function isBareMetal(words: string): boolean {
  return WORDS.metal.test(words) && (!LAYER.test(words) || /\bbare\b|\bun(?:painted|coated)\b/i.test(words));
}
