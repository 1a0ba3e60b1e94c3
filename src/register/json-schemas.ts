/**
 * JSON Schemas (draft 7) of all front matter, for editors, which complete keys by them and mark what cannot be. They are made from the shapes that
 * read the files. What they refuse the register refuses too; it also sees what no schema can, such as a unit of another quantity.
 */
import { FRONT_MATTER } from './files/front-matter-shapes.ts';
import { type KeyFacts, keysOf } from './values/shape.ts';
import type { Below, Form, Takes } from './values/takes.ts';

type Json = Readonly<Record<string, unknown>>;

/** What an editor's YAML may make of a text: `1.10` a number, `2026-03-14` a day as text, `yes` the word itself or a truth. */
const ANY_TEXT: Json = { type: ['string', 'number', 'boolean'] };
/** A text of which only some are right. Others than strings are never among them. */
const FORM_SCHEMAS: Partial<Record<Form, Json>> = {
  'yes or no': { enum: ['yes', 'no', true, false] },
  day: { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' },
  id: { type: ['string', 'number'], pattern: '^[a-z0-9]+(-[a-z0-9]+)*$' },
  address: { type: 'string', pattern: '^https://' },
};
/** A number comes first, and its unit follows. */
const QUANTITY: Json = { type: 'string', pattern: '^[+\\-−]?[\\d.]' };

/** By folder of content/. */
export function jsonSchemas(): Readonly<Record<string, Json>> {
  return Object.fromEntries(
    Object.entries(FRONT_MATTER).map(([folder, shape]) => [
      folder,
      { $schema: 'http://json-schema.org/draft-07/schema#', title: `content/${folder}/<id>.md`, ...objectOf(shape) },
    ]),
  );
}

function objectOf(shape: Below['shape']): Json {
  const facts = keysOf(shape);
  return {
    type: 'object',
    properties: Object.fromEntries(facts.map((fact) => [fact.key, keySchema(fact)])),
    required: facts.filter((fact) => fact.required).map(({ key }) => key),
    additionalProperties: false,
  };
}

function keySchema({ kinds, about, takes }: KeyFacts): Json {
  const forms = kinds.map((kind) => (kind === 'text' ? textOf(takes) : kind === 'list' ? listOf(takes) : mapOf(takes)));
  return { description: about, ...(forms.length === 1 ? forms[0]! : { anyOf: forms }) };
}

function textOf({ words, quantity, form, means }: Takes): Json {
  if (words) return means === undefined && form === undefined ? { enum: words } : ANY_TEXT;
  if (quantity) return QUANTITY;
  return (form && means === undefined ? FORM_SCHEMAS[form] : undefined) ?? ANY_TEXT;
}

function listOf({ each, ...takes }: Takes): Json {
  return { type: 'array', minItems: 1, items: each ? objectOf(each.shape) : textOf(takes) };
}

/** With the keys of a shape, or with names of the author's own; a name may stand for a mapping in one line. */
function mapOf({ keys, each }: Takes): Json {
  if (keys) return objectOf(keys.shape);
  const values = each ? [objectOf(each.shape), ANY_TEXT] : [ANY_TEXT, { type: 'array', minItems: 1 }, { type: 'object' }];
  return { type: 'object', minProperties: 1, additionalProperties: { anyOf: values } };
}
