import { expect, test } from 'vitest'
import type { ScreenName } from '../../../../src/ui/navigation.ts'
import { EVERY_SCREEN } from '../../support/every-screen.ts'

const DUE: readonly ScreenName[] = ['due', 'judge', 'compare', 'buy', 'arrivals', 'order', 'outing']

test.each(EVERY_SCREEN.filter(({ at }) => DUE.includes(at)))(
  '$name: Enter alone records nothing',
  async ({ open }) => {
    const desk = await open()
    const before = desk.session?.entries().length
    desk.press({ text: '\r' })
    expect(desk.session?.entries().length).toBe(before)
    expect(before).toBeGreaterThan(1)
  },
)
