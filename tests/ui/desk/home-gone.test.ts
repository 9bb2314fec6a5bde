import { setImmediate } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import { emptyHome, say, screens } from '../support/bench.ts'

/** A home on a network disk, which answers until it does not. */
class Share extends DiskShelf {
  isGone = false
  asked = 0

  override headers() {
    this.asked += 1
    if (this.isGone) throw Object.assign(new Error('ESTALE'), { code: 'ESTALE', path: this.home })
    return super.headers()
  }
}

test('a home that cannot be read any more is said, is not asked on and on, and its jobs come back with it', async () => {
  const shelf = new Share(emptyHome())
  const path = shelf.create({ name: 'blue twin', machine: 'the blue twin', units: 'metric' })
  say(shelf.open(path), 'strip cover')
  const { desk, enter, text, answer } = screens(shelf)
  shelf.isGone = true
  enter('jobs')
  shelf.asked = 0
  // A frame is drawn whenever something has changed.
  let drawn = -1
  for (let turn = 0; turn < 50; turn += 1) {
    if (drawn !== desk.version) text()
    drawn = desk.version
    await setImmediate()
  }
  expect(answer()).toContain('the network disk does not answer')
  expect(shelf.asked).toBeLessThan(5)
  shelf.isGone = false
  enter('jobs')
  expect(text()).toContain('blue twin')
})
