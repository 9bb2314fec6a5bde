import * as z from 'zod/mini'

/** As much of a JSON Schema (draft 2020-12) as describes an entry. */
export interface Shape {
  type?: 'object' | 'array' | 'string' | 'integer' | 'number' | 'boolean' | 'null'
  const?: unknown
  enum?: unknown[]
  anyOf?: Shape[]
  oneOf?: Shape[]
  properties?: Record<string, Shape>
  required?: string[]
  additionalProperties?: boolean
  items?: Shape
  minItems?: number
  maxItems?: number
  minLength?: number
  maxLength?: number
  pattern?: string
  format?: string
  minimum?: number
  maximum?: number
  exclusiveMinimum?: number
}

/** What each kind of entry is made of, by its type, as a JSON Schema. */
export function shapesOf(schemas: ReadonlyMap<string, z.ZodMiniType>): Record<string, Shape> {
  return Object.fromEntries([...schemas].map(([type, schema]) => [type, shapeOf(schema)]))
}

function shapeOf(schema: z.ZodMiniType): Shape {
  const { $schema: _, ...shape } = z.toJSONSchema(schema, {
    override: ({ jsonSchema }) => {
      // A day or a moment is what its name says; the pattern for it is the library's own affair.
      if (jsonSchema.format !== undefined) delete jsonSchema.pattern
      jsonSchema.required?.sort()
    },
  })
  return shape as Shape
}

/** JSON to be read in review: what fits on a line stands on one, and in which order facts were named says nothing. */
export function readableJson(value: unknown, indent = ''): string {
  const flat = JSON.stringify(value, sortedKeys)
  if (typeof value !== 'object' || value === null || indent.length + flat.length <= WIDTH) return flat
  const deeper = `${indent} `
  const [open, close] = Array.isArray(value) ? '[]' : '{}'
  const inner = Array.isArray(value)
    ? value.map((each) => deeper + readableJson(each, deeper))
    : Object.entries(sortedKeys('', value) as object).map(
        ([key, each]) => `${deeper}${JSON.stringify(key)}: ${readableJson(each, deeper)}`,
      )
  return `${open}\n${inner.join(',\n')}\n${indent}${close}`
}

const WIDTH = 110

function sortedKeys(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value
  return Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)))
}
