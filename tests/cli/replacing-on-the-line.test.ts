import { describe, expect, test } from 'vitest'
import { benchWithJob } from './support/bench.ts'

const pump = [
  'begin pump off',
  'off water pump into new bag',
  'on water pump: 3 studs M6x25',
  'end',
  'new water pump instead',
]

describe('an old piece and a new one on the command line', () => {
  test('shows what to hold them side by side for, with what was said', () => {
    const { say, told } = benchWithJob(...pump)
    told('compare p3: ports alike, 2 differs one hole more')
    const { code, out } = say('compare water pump')
    expect(code).toBe(0)
    const [head, ...rows] = out.trimEnd().split('\n')
    expect(head).toBe('water pump (p3), on the bench, beside the old one, p1, in bag 1: not compared yet')
    expect(rows.slice(0, 3)).toEqual([
      '  1  ports  alike',
      '  2  bolt holes  differs, but right, one hole more',
      '  3  threads',
    ])
    expect(rows.at(-1)).toContain('"compare p3: rest alike" when all the rest is')
    expect(JSON.parse(say('--json', 'compare', 'p3').out).answer).toMatchObject({ old: 'p1', verdict: 'due' })
  })

  test('lists what is to be compared, and says when nothing is', () => {
    const { say, told } = benchWithJob(...pump)
    expect(say('compare').out).toMatch(/^p3 {2}water pump \(p3\), on the bench, beside the old one, p1/)
    told('move over from old water pump to water pump', 'compare water pump: alike')
    expect(say('compare').out).toBe('Nothing is to be compared.\n')
    expect(say('compare p1').out).toBe('water pump (p1) has no old one to be held beside.\n')
    expect(say('where old water pump').out).toContain('1 in scrap')
  })

  test('shows what rides on a piece wherever the piece is shown', () => {
    const { say, told } = benchWithJob(...pump)
    expect(say('where p1').out).toContain('water pump with 3 × studs M6x25 on it: 1 in bag 1')
    expect(say('where').out).toContain('p1  1 × water pump with 3 × studs M6x25 on it')
    expect(say('scan 1').out).toContain('on water pump p1: p2  3 × studs M6x25: goes to')
    told('move over from p1 to p3')
    expect(say('where studs').out).toContain('3 on water pump p3')
  })
})
