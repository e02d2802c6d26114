import * as z from 'zod/mini';
import { kinds, keySchema } from '../core/keys.ts';
import { isReadKind, valueSchemas, type ReadKind } from '../core/records.ts';
import { conditionSchema, leafSchemas } from '../core/rules.ts';
import { schemaWords as words } from '../words/en/schema.ts';
import { envelopeSchema } from './envelope.ts';
import { walkFileSchema } from './document.ts';

/** JSON Schema, as plain JSON. */
export type JsonSchema = { readonly [name: string]: unknown };

const ref = (name: string): JsonSchema => ({ $ref: `#/$defs/${name}` });

type Override = NonNullable<NonNullable<Parameters<typeof z.toJSONSchema>[1]>['override']>;

/** Conditions hold conditions: the schema refers to itself instead of being written out level by level. */
const recursive: Override = ({ zodSchema, jsonSchema }) => {
  if ((zodSchema as unknown) !== conditionSchema) return;
  for (const name of Object.keys(jsonSchema)) delete jsonSchema[name];
  Object.assign(jsonSchema, ref('condition'));
};

function schemaOf(schema: z.ZodMiniType): JsonSchema {
  const { $schema: _dialect, ...rest } = z.toJSONSchema(schema, { override: recursive });
  return rest;
}

function condition(): JsonSchema {
  const holding = (name: string, inner: JsonSchema): JsonSchema => ({
    type: 'object',
    properties: { [name]: inner },
    required: [name],
    additionalProperties: false,
  });
  const list = { type: 'array', minItems: 1, maxItems: 30, items: ref('condition') };
  return {
    description: words.condition,
    anyOf: [
      holding('all', list),
      holding('any', list),
      holding('not', ref('condition')),
      ...leafSchemas.map(schemaOf),
    ],
  };
}

/** A record of a kind that we read holds a value of that kind, or one of a newer version. */
const valueOf = (kind: ReadKind): JsonSchema => ({
  anyOf: [
    { properties: { key: { not: { pattern: `^${kind}/` } } } },
    { properties: { value: { anyOf: [ref(kind), ref('newer')] } } },
  ],
});

const said = (schema: unknown, description: string): JsonSchema => ({
  ...(schema as JsonSchema),
  description,
});

function record(): JsonSchema {
  const { properties, ...envelope } = schemaOf(envelopeSchema) as JsonSchema & { properties: JsonSchema };
  const { pattern } = schemaOf(keySchema);
  return {
    ...envelope,
    properties: {
      key: { type: 'string', pattern, not: { pattern: '^demo/' }, description: words.key },
      value: said(properties['value'], words.value),
      stamp: said(properties['stamp'], words.stamp),
      seen: said(properties['seen'], words.seen),
      by: said(properties['by'], words.by),
    },
    // Written by hand: a value, and nothing of a stamp.
    anyOf: [
      { required: ['stamp'] },
      { required: ['value'], not: { anyOf: [{ required: ['seen'] }, { required: ['by'] }] } },
    ],
    allOf: kinds.filter(isReadKind).map(valueOf),
  };
}

/** The JSON Schema (2020-12) of the walk file, made from the schemas that read it. */
export function jsonSchema(): JsonSchema {
  const { properties, ...document } = schemaOf(walkFileSchema) as JsonSchema & { properties: JsonSchema };
  const values = kinds.filter(isReadKind).map((kind) => [kind, schemaOf(valueSchemas[kind])] as const);
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: words.title,
    description: words.about,
    ...document,
    properties: {
      ...properties,
      records: { type: 'array', minItems: 1, items: ref('record') },
      seals: said(properties['seals'], words.seals),
    },
    $defs: {
      record: record(),
      ...Object.fromEntries(values),
      condition: condition(),
      newer: {
        description: words.newer,
        type: 'object',
        properties: { v: { type: 'number', exclusiveMinimum: 1 } },
        required: ['v'],
      },
    },
  };
}
