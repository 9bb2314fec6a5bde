import type { Chance } from '../support/damage/chance.ts'

/** A file with some damage by chance: bytes flipped, lost, doubled, exchanged, cut off, or of another file. */
export function mutated(bytes: Uint8Array, other: Uint8Array, chance: Chance): Uint8Array {
  let file: Buffer = Buffer.from(bytes)
  for (let hits = fewOf(chance); hits > 0; hits -= 1) file = hit(file, other, chance)
  return file
}

/** Mostly one: what is wrong all over is refused at the first look. */
function fewOf(chance: Chance): number {
  return chance.whole(0, 2) === 0 ? chance.whole(2, 6) : 1
}

function hit(file: Buffer, other: Uint8Array, chance: Chance): Buffer {
  const at = chance.whole(0, file.length)
  const end = Math.min(file.length, at + 2 ** chance.whole(0, 8))
  const between = (put: Uint8Array) => Buffer.concat([file.subarray(0, at), put, file.subarray(end)])
  switch (chance.whole(0, 7)) {
    case 0:
      return Buffer.from(file.map((byte, index) => (index === at ? byte ^ (1 << chance.whole(0, 7)) : byte)))
    case 1:
      return between(Buffer.alloc(0))
    case 2:
      return between(Buffer.concat([file.subarray(at, end), file.subarray(at, end)]))
    case 3:
      return between(Buffer.from(Array.from({ length: end - at }, () => chance.whole(0, 255))))
    case 4:
      return between(Buffer.alloc(end - at, [0x00, 0xff, 0x20, 0x5b, 0x7b, 0x39][chance.whole(0, 5)]))
    case 5:
      return between(other.subarray(chance.whole(0, other.length)))
    case 6:
      return file.subarray(0, at)
    default:
      // Lengths and counts are what readers trust.
      return between(
        Buffer.from(
          [
            [0xff, 0xff, 0xff, 0xff],
            [0x7f, 0xff, 0xff, 0xff],
            [0, 0, 0, 0],
          ][chance.whole(0, 2)] ?? [],
        ),
      )
  }
}

/** A value of JSON with some of its parts exchanged for what nobody expects there. */
export function mutatedJson(value: unknown, chance: Chance): string {
  let text = JSON.stringify(value)
  for (let hits = fewOf(chance); hits > 0; hits -= 1) {
    const tokens = [...text.matchAll(/"(?:[^"\\]|\\.)*"|-?\d+(?:\.\d+)?|[{}[\],:]|true|null/g)]
    const token = tokens[chance.whole(0, tokens.length - 1)]
    if (!token) return text
    const odd = chance.whole(0, 1) === 0 ? ODD_JSON : ODD_NUMBERS
    const put = odd[chance.whole(0, odd.length - 1)] ?? ''
    text = text.slice(0, token.index) + put + text.slice(token.index + token[0].length)
  }
  return text
}

const ODD_NUMBERS = [
  '0',
  '-0',
  '1',
  '5',
  '0.1',
  '64',
  '100',
  '203',
  '300',
  '1000',
  '65535',
  '1e2',
  '1e999',
  '1e-400',
]

const ODD_JSON = [
  '',
  'null',
  '-0',
  '0',
  '1e999',
  '-1e999',
  '1e-400',
  '99999999999999999999999',
  '0.1',
  '""',
  '"__proto__"',
  '"constructor"',
  '"\\u001b[2J"',
  '"\\ud800"',
  '"\\u202e"',
  '[]',
  '{}',
  '{"__proto__":{"isAdmin":true}}',
  '{"constructor":{"prototype":{"x":1}}}',
  '{"a":1,"a":2}',
  '['.repeat(20_000),
  `${'['.repeat(5000)}${']'.repeat(5000)}`,
  '{"a":'.repeat(5000),
  `"${'x'.repeat(70_000)}"`,
  ',',
  ':',
  '}',
]
