import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import { Gates } from '../../src/plan/gates.ts'
import { type Proposal, proposals } from '../../src/plan/proposals.ts'
import { addStep, at, done, drain, endStrip, look, off, override, putOn, strip } from '../support/commands.ts'
import { given } from '../support/journal.ts'

// What is proposed is common practice; no proposal becomes a step unless the user takes it.

const ROUND = 'Tip out every bag and tray, look round the bench'
const proposed = (...commands: Command[]) => proposals(given(...commands).state)
const take = ({ title, kind, way, needs, before, due }: Proposal): Command =>
  addStep(title, {
    kind: kind as Exclude<typeof kind, 'refit'>,
    way: way as Exclude<typeof way, 'both'>,
    needs,
    before,
    due,
  })

describe('what the kind of thing suggests', () => {
  test.each<[string, Command[], string[]]>([
    ['nothing came off', [], []],
    ['a bracket', [strip('bracket off')], []],
    ['a cover: its faces', [strip('valve cover off')], ['Clean the joint faces: valve cover']],
    [
      'a gasket, whatever the step',
      [strip('side off'), off(1, 'gasket')],
      ['Clean the joint faces: side', ROUND],
    ],
    [
      'a chain: turn by hand',
      [strip('timing chain out')],
      ['Turn the crank two full turns by hand, marks line up'],
    ],
    [
      'a cover of the chain is no timing drive',
      [strip('chain cover off')],
      ['Clean the joint faces: chain cover'],
    ],
    [
      'a drained fluid: its level, after the start',
      [strip('radiator out'), drain('coolant')],
      ['Check the level: coolant'],
    ],
    [
      'a hose: leaks, after the start',
      [strip('radiator out'), off(2, 'radiator hose', { kind: 'connection' })],
      ['Look for leaks, cold and hot', ROUND],
    ],
    [
      'two hoses: once',
      [
        strip('a'),
        off(1, 'hose', { kind: 'connection' }),
        strip('b'),
        off(1, 'fuel line', { kind: 'connection' }),
      ],
      ['Look for leaks, cold and hot', ROUND],
    ],
    ['what went into a bag: a last round', [strip('side off'), off(1, 'lever')], [ROUND]],
    ['what lay on the bench alone: none', [strip('side off'), off(1, 'lever', { into: at('bench') })], []],
    [
      'a bag that is empty again: a last round',
      [strip('side off'), off(1, 'lever'), endStrip, putOn('p1'), done(1)],
      [ROUND],
    ],
    [
      'one round for a job, whatever its title',
      [strip('side off'), off(1, 'lever'), addStep('look round', { due: 'last' })],
      [],
    ],
    ['one round for a job', [strip('side off'), off(1, 'lever'), addStep(ROUND)], []],
    [
      'not again what the job has',
      [strip('valve cover off'), addStep('clean the joint faces: valve cover off')],
      [],
    ],
  ])('%s', (_, commands, titles) => {
    expect(proposed(...commands).map(({ title }) => title)).toEqual(titles)
  })

  test('turning by hand comes after all of the drive, and before what closes it in', () => {
    const job = [strip('valve cover off'), strip('cams out'), strip('cam chain out'), strip('pistons out')]
    expect(proposed(...job).find(({ kind }) => kind === 'turn')).toMatchObject({ needs: [2, 3], before: [1] })
  })

  test('nothing before a step that is done', () => {
    const built = [off(1, 'head cover'), endStrip, override('look 1'), putOn('p1'), done(1)]
    expect(proposed(...built).map(({ title }) => title)).toEqual([ROUND])
    const chain = [strip('side cover off'), off(1, 'lid'), strip('cam chain out'), off(1, 'chain'), endStrip]
    const closed = [...chain, putOn('p2'), done(2), look(1), putOn('p1'), done(1)]
    expect(proposed(...closed)).toMatchObject([{ kind: 'turn', needs: [2], before: [] }, { title: ROUND }])
  })
})

const titles = ['valve cover off', 'cams out', 'cam chain out', 'head off', 'pistons out', 'bracket off']
const stripDowns = fc.array(fc.record({ title: fc.constantFrom(...titles), after: fc.nat(9) }), {
  minLength: 1,
  maxLength: 8,
  size: 'max',
})

test('whatever came off, in whatever order: every proposal can be taken, and none is made twice', () => {
  fc.assert(
    fc.property(stripDowns, fc.nat(8), (steps, built) => {
      const apart = steps.flatMap(({ title, after }, index) => [
        strip(title, { after: index === 0 ? [] : [1 + (after % index)], hides: false }),
        off(1, `piece ${index + 1}`),
      ])
      let job = given(...apart, endStrip)
      for (let step = 0; step < built % (steps.length + 1); step += 1) {
        const ready = new Gates(job.state).ready()[0] as number
        job = job.and(putOn(`p${ready}`), done(ready))
      }
      for (const proposal of proposals(job.state)) {
        expect(decide(job.state, take(proposal))).toMatchObject({ ok: true })
        job = job.and(take(proposal))
      }
      expect(proposals(job.state)).toEqual([])
    }),
    { numRuns: 150 },
  )
})
