import fc from 'fast-check'
import type { Shape } from './entry-shapes.ts'

/** Anything that has a shape. Throws on what no shape of an entry holds so far, rather than to pass it over. */
export function anyOfShape(shape: Shape): fc.Arbitrary<unknown> {
  const choices = shape.anyOf ?? shape.oneOf
  if (choices) return fc.oneof(...choices.map(anyOfShape))
  if (shape.const !== undefined) return fc.constant(shape.const)
  if (shape.enum) return fc.constantFrom(...shape.enum)
  switch (shape.type) {
    case 'object':
      return anyObject(shape)
    case 'array':
      return anyArray(shape)
    case 'string':
      return anyText(shape)
    case 'integer':
      return fc.integer({ min: shape.minimum ?? 0, max: Math.min(shape.maximum ?? 1, MOST) })
    case 'number':
      return anyNumber(shape)
    case 'boolean':
      return fc.boolean()
    case 'null':
      return fc.constant(null)
    default:
      throw new Error(`a shape that nobody can make: ${JSON.stringify(shape)}`)
  }
}

/** More than any entry counts, and no more than 32 bits. */
const MOST = 2 ** 31 - 1

function anyObject({ properties = {}, required = [], additionalProperties }: Shape): fc.Arbitrary<unknown> {
  if (additionalProperties !== false) throw new Error('a shape that takes facts of any name')
  const facts: Record<string, fc.Arbitrary<unknown>> = {}
  for (const [fact, shape] of Object.entries(properties)) facts[fact] = anyOfShape(shape)
  return fc.record(facts, { requiredKeys: required, noNullPrototype: true })
}

function anyArray({ items, minItems = 0, maxItems = 3 }: Shape): fc.Arbitrary<unknown> {
  if (!items) throw new Error('a list of nothing')
  return fc.array(anyOfShape(items), { minLength: minItems, maxLength: Math.min(maxItems, minItems + 2) })
}

function anyText({ format, pattern, minLength = 0, maxLength }: Shape): fc.Arbitrary<string> {
  if (format === 'date-time') return anyMoment.map((moment) => moment.toISOString())
  if (format === 'date') return anyMoment.map((moment) => moment.toISOString().slice(0, 10))
  if (format !== undefined) throw new Error(`a text in the format ${format}`)
  const some = fc.string({ minLength, maxLength: Math.min(maxLength ?? SOME, minLength + SOME) })
  if (pattern === undefined) return some
  const asked = new RegExp(pattern, 'u')
  // What looks ahead cannot be made to order.
  return pattern.includes('(?!') ? some.filter((text) => asked.test(text)) : fc.stringMatching(asked)
}

/** Characters beyond the fewest. */
const SOME = 20

const anyMoment = fc.date({
  min: new Date('2000-01-01T00:00:00Z'),
  max: new Date('2099-12-31T00:00:00Z'),
  noInvalidDate: true,
})

function anyNumber({ minimum, exclusiveMinimum, maximum = 1e9 }: Shape): fc.Arbitrary<number> {
  const min = minimum ?? exclusiveMinimum ?? -1e9
  return fc.double({ min, max: maximum, minExcluded: exclusiveMinimum !== undefined, noNaN: true })
}
