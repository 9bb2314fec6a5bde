import { render } from 'ink-testing-library'
import { describe, expect, onTestFinished, test, vi } from 'vitest'
import { DiskShelf } from '../../src/cli/job-shelf.ts'
import { App } from '../../src/ui/app.tsx'
import { textOf } from '../../src/ui/text/line.ts'
import { emptyHome, say, screens } from './support/bench.ts'

const pump = [
  'begin pump off, does not hide',
  'off 2 M6x25 pump bolts into new bag',
  'end',
  'sealant 1: grey sealant on the pump face, within 5 min, cures 24 h',
]

/** The screens before a job, with a clock that a test sets on. */
function benchWith(...lines: string[]) {
  let now = new Date(2030, 0, 15, 14).getTime()
  const shelf = new DiskShelf(emptyHome(), { now: () => new Date(now) })
  const path = shelf.create({ name: 'blue twin', machine: 'the blue twin', units: 'metric' })
  say(shelf.open(path), ...lines)
  return {
    ...screens(shelf),
    later: (minutes: number) => {
      now += minutes * 60_000
    },
  }
}

describe('what is put on', () => {
  test('comes before the pieces, and its working time is shown from then on', () => {
    const { enter, text, desk, later, answer } = benchWith(...pump)
    enter('take 1')
    expect(text()).toContain('NEXT: PUT ON')
    expect(text()).toContain('together within 5 min')
    expect(text()).not.toContain('TIME RUNS')
    expect(text()).toContain('PUT ON IN IT')
    expect(text()).toMatch(/sets 24 h\s+before the first start, not on yet/)
    enter('1')
    expect(answer()).toContain('put on: s1, grey sealant on the pump face, together within 5 min')
    expect(text()).toContain('TIME RUNS')
    expect(text()).toContain('put the joint together, 5 min to go')
    expect(desk.page().large?.under.map(textOf)).toContain('5 min to go')
    later(2)
    desk.tick()
    expect(text()).toContain('3 min to go')
    later(4)
    desk.tick()
    expect(text()).toContain('its working time has run out')
    expect(desk.page().large?.under.map(textOf)).toContain('working time has run out')
    expect(text()).toContain('NEXT: PUT ON')
    enter('.')
    expect(text()).toContain('TIME RUNS')
  })

  test('with its side in large letters, where it has one', () => {
    const { enter, desk } = benchWith(...pump.slice(0, 3), 'gasket side 1: pump gasket, TOP up')
    enter('take 1')
    const { letters = '', under = [] } = desk.page().large ?? {}
    expect([letters, ...under.map(textOf)]).toEqual(['TOP', 'up, pump gasket'])
  })

  test('and while it sets, what waits says how long', () => {
    const { enter, text, desk, later } = benchWith(...pump, 'applied s1', 'fit pump bolts', 'done 1')
    enter('left')
    expect(text()).toContain('must set, 24 h to go')
    later(90)
    desk.tick()
    expect(text()).toContain('must set, 22 h 30 min to go')
    later(24 * 60)
    desk.tick()
    expect(text()).not.toContain('must set')
    expect(desk.isTimed()).toBe(false)
  })
})

describe('a second goes by', () => {
  test('and nothing is drawn while no time says anything else', () => {
    const { desk, later } = benchWith(...pump, 'applied s1')
    desk.tick()
    const { version } = desk
    desk.tick()
    later(0.2)
    desk.tick()
    expect(desk.version).toBe(version)
    later(1)
    desk.tick()
    expect(desk.version).toBe(version + 1)
  })

  test('where nothing runs nobody looks', () => {
    expect(benchWith(...pump).desk.isTimed()).toBe(false)
    expect(benchWith(...pump, 'applied s1').desk.isTimed()).toBe(true)
  })

  test('on a terminal the time is drawn anew by itself', async () => {
    const { desk, later } = benchWith(...pump, 'applied s1')
    const terminal = { subscribe: () => () => {}, placeCursor: () => {} }
    const app = render(<App desk={desk} terminal={terminal} colour={false} />)
    onTestFinished(() => app.unmount())
    await vi.waitFor(() => expect(app.lastFrame()).toContain('5 min to go'))
    later(3)
    await vi.waitFor(() => expect(app.lastFrame()).toContain('2 min to go'), { timeout: 10_000 })
  })
})

describe('when it is together', () => {
  test('is offered once there is something to go by, and told on a page of its own', () => {
    const { enter, text } = benchWith(...pump.slice(0, 3))
    enter('.')
    expect(text()).not.toContain('when it is together')
    enter('step 1 minutes 90', '.')
    expect(text()).toContain(' 10  when it is together')
    enter('10')
    expect(text()).toContain('WHEN IT IS TOGETHER  an estimate')
    expect(text()).toContain('Together 15:30 at the earliest, in 1 h 30 min.')
    enter('.3')
    expect(text()).toContain('"finish" says when it is together')
    enter('finish', '1')
    expect(text()).toContain('step 1, pump')
  })
})
