import { expect } from 'vitest'
import type { Result } from '../../../src/cli/result.ts'
import type { Hands } from './hands.ts'

/** Types what the command line refuses: it is refused on the screen, in the same words. */
export async function refusedAlike(
  hands: Hands,
  line: string,
  { told, code, facts }: Extract<Result, { ok: false }>,
): Promise<void> {
  await hands.clear()
  if (code === 'which-piece') {
    await hands.goTo(/WHICH ONE\?/, `${line}\r`)
    const [, count] = /^(\d+ pieces) /.exec(told.what) ?? []
    expect(hands.where()).toContain(`may be ${count}`)
    await hands.back()
    return
  }
  const sign = facts && 'misreading' in facts ? '? NOT UNDERSTOOD ' : 'X REFUSED '
  await hands.press(`${line}\r`, () => hands.said().startsWith(sign), sign)
  const said = hands.said()
  expect(said).toContain(`${sign} ${told.what}`)
  expect(said.endsWith(told.cure)).toBe(true)
  if (!/ and \d+ more /.test(said)) for (const reason of told.lines) expect(said).toContain(reason)
}
