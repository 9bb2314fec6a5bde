import { expect, test, vi } from 'vitest'
import { untilLeft } from '../../src/ui/until-left.ts'

function shown(app: Promise<unknown>, ended: number | null = 0) {
  const done: string[] = []
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => done.push(`out: ${text}`) > 0)
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => done.push(`error: ${text}`) > 0)
  const desk = {
    ended,
    lastWords: ['5 pictures taken over.'],
    progress: () => null,
    close: () => done.push('closed'),
  }
  const terminal = { restore: () => done.push('restored') }
  const exit = untilLeft({ desk, app: { waitUntilExit: () => app }, terminal })
  return { exit, done }
}

test('what is left to say is said when the terminal is given back', async () => {
  const { exit, done } = shown(Promise.resolve(), 3)
  expect(await exit).toBe(3)
  expect(done.slice(0, 2)).toEqual(['restored', 'out: 5 pictures taken over.\n'])
  expect(done).toContain('closed')
})

test('a fault of our own is told when the terminal is given back, and the job is left to others', async () => {
  const { exit, done } = shown(Promise.reject(new Error('a page that nobody thought of')))
  expect(await exit).toBe(1)
  expect(done[0]).toBe('restored')
  expect(done[1]).toMatch(
    /^error: putback stopped by a fault of its own\..*\n.*a page that nobody thought of/,
  )
  expect(done).toContain('closed')
})
