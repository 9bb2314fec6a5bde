import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { JOURNAL_NAME } from '../../src/storage/journal/journal-file.ts'
import { buildOnce, onFirstJob, PutbackTerminal } from './support/putback-terminal.ts'

beforeAll(buildOnce)

function journal(home: string): string[] {
  const folder = readdirSync(home, { withFileTypes: true }).find((entry) => entry.isDirectory())?.name ?? ''
  return readFileSync(join(home, folder, JOURNAL_NAME), 'utf8')
    .trimEnd()
    .split('\n')
}

describe('a first job at 80 by 24', () => {
  test('begins with Enter, and three lines come off and are on the disk', async () => {
    const { terminal, home } = await onFirstJob()
    expect(terminal.rows()[0]).toMatch(/^blue twin 001 .*off 0$/)
    terminal.write('8 M6x25 hex 10 valve cover bolts\r')
    await terminal.sees('off 8 = 8 in containers')
    terminal.write('valve cover into bench\r')
    await terminal.sees('off 9 = 8 stored + 1 bench')
    terminal.write('4 nuts\r')
    await terminal.sees('off 13 = 12 stored + 1 bench')
    const types = journal(home).map((line) => /"type":"([a-z-]+)"/.exec(line)?.[1])
    expect(types).toEqual(['opened', 'came-off', 'came-off', 'came-off'])
  })

  test('reads a bag line while it is typed, and writes nothing', async () => {
    const { terminal, home } = await onFirstJob()
    terminal.write('8 M6x25 hex 10 valve cover bo')
    await terminal.sees('M6, pitch 1 assumed, length 25 mm · hex 10')
    const row = terminal.rows().findIndex((text) => text.includes(' > 8 M6x25'))
    expect(terminal.cursor()).toEqual({ row, column: ' > 8 M6x25 hex 10 valve cover bo'.length })
    expect(journal(home)).toHaveLength(1)
  })

  test('whatever is set for other programs', async () => {
    const env = { DEV: 'true', DEBUG: '*', NODE_ENV: 'development', CI: 'true', COLUMNS: '10', LINES: '5' }
    const { terminal } = await onFirstJob({ env })
    expect(terminal.rows()[0]).toMatch(/^blue twin 001 .*off 0$/)
  })

  test('is drawn on the rows it has, whatever came before', async () => {
    const { terminal } = await onFirstJob()
    for (const screen of ['.', '.2', '.3', '.4', '.5', '.1']) {
      terminal.write(`${screen}\r`)
      await terminal.sees(`[${screen === '.' ? '. NOW' : screen} `.trimEnd())
      const rows = terminal.rows()
      expect(rows.filter((row) => row.startsWith('blue twin 001'))).toHaveLength(1)
      expect(rows.filter((row) => row.startsWith(' >'))).toHaveLength(1)
      expect(rows.filter((row) => row.startsWith('─'))).toHaveLength(2)
    }
  })
})

describe('a scanner that types', () => {
  const one = labelCode(1, 1)
  const two = labelCode(1, 2)

  async function withTwoBags() {
    const { terminal, home } = await onFirstJob()
    terminal.write('8 valve cover bolts into new bag\r')
    await terminal.sees('into bag 1 (new)')
    terminal.write('2 dowels into new bag\r')
    await terminal.sees('into bag 2 (new)')
    return { terminal, home }
  }

  test.each([
    ['a return', '\r'],
    ['a return and a line feed', '\r\n'],
    ['a tab', '\t'],
  ])('a code in one chunk with %s behind it', async (_, suffix) => {
    const { terminal, home } = await withTwoBags()
    terminal.write(`${one}${suffix}`)
    const text = await terminal.sees(
      new RegExp(`─ bag 1 .* label ${one.slice(0, 3)} ${one.slice(3, 7)} ${one.slice(7)}`),
    )
    expect(text).toContain('8 × valve cover bolts')
    expect(terminal.rows()).toContain(' >')
    expect(journal(home)).toHaveLength(3)
  })

  test('two codes in one chunk', async () => {
    const { terminal } = await withTwoBags()
    terminal.write(`${one}\r${two}\r`)
    await terminal.sees('─ bag 2 ')
    terminal.write('\x7f')
    await terminal.sees('─ bag 1 ')
  })

  test('digit by digit', async () => {
    const { terminal } = await withTwoBags()
    for (const digit of `${two}\r`) {
      terminal.write(digit)
      await new Promise((resolve) => setTimeout(resolve, 2))
    }
    await terminal.sees('─ bag 2 ')
  })

  test('a burst while words are being typed: it is answered, and the words are still there', async () => {
    const { terminal, home } = await withTwoBags()
    terminal.write('4 M6x20 hex 8 pump co')
    await terminal.sees(' > 4 M6x20 hex 8 pump co')
    terminal.write(`${one}\r`)
    await terminal.sees('─ bag 1 ')
    await terminal.sees(' > 4 M6x20 hex 8 pump co')
    terminal.write('\x15.1\r')
    await terminal.sees('[.1 OFF]')
    expect(journal(home)).toHaveLength(3)
  })
})

describe('when it is killed', () => {
  test('nothing acknowledged is lost, and the next start says where one was', async () => {
    const { terminal, home } = await onFirstJob()
    terminal.write('begin cylinder head off\r')
    await terminal.sees('step 1, cylinder head off')
    terminal.write('8 M10x120 E14 head bolts\r')
    await terminal.sees('off 8 = 8 in containers')
    terminal.write('half a li')
    await terminal.sees(' > half a li')
    terminal.signal('SIGKILL')
    await terminal.sees('left with 137')

    const again = new PutbackTerminal(home)
    await again.sees('[. NOW]')
    const text = await again.sees('go on with step 1, cylinder head off')
    expect(text).toContain('off 8 = 8 in containers')
    expect(text).toContain('came off: 8 × head bolts M10x120 E14')
  })

  test('a bolt of an angle pass that may have been turned is asked about', async () => {
    const { terminal, home } = await onFirstJob()
    const lines = [
      'begin cover off, does not hide',
      'off 3 M10x120 E14 cover bolts into bench',
      'end',
      'tighten cover bolts: 20 Nm, 90 deg',
      'take 1',
      'fit cover bolts',
    ]
    for (const [index, line] of lines.entries()) {
      terminal.write(`${line}\r`)
      await terminal.sees(`0 takes entry ${index + 2} back.`)
    }
    // One pass of torque over three bolts, and one bolt through its angle.
    for (let entry = 8; entry <= 11; entry += 1) {
      terminal.enter()
      await terminal.sees(`0 takes entry ${entry} back.`)
    }
    terminal.signal('SIGKILL')
    await terminal.sees('left with 137')

    const again = new PutbackTerminal(home)
    await again.sees('broken off after')
    await again.sees('turn fastener 2, perhaps turned already')
    again.write('\r')
    await again.sees('IN DOUBT')
    again.write('\r\r\r')
    await again.sees('Was fastener 2 turned before the work broke off?')
    expect(journal(home).filter((line) => line.includes('"tightened"'))).toHaveLength(4)
  })
})

describe('two terminals on one job', () => {
  test('one sees what the other writes, and keeps what is being typed', async () => {
    const { terminal, home } = await onFirstJob()
    const other = new PutbackTerminal(home)
    await other.sees('[. NOW]')
    other.write('.1\r4 M6x20 hex 8 pump')
    await other.sees(' > 4 M6x20 hex 8 pump')
    terminal.write('8 valve cover bolts\r')
    await other.sees('off 8 = 8 in containers')
    expect(other.text()).toContain(' > 4 M6x20 hex 8 pump')
  })
})

describe('the window', () => {
  test('may change its size at any time, says so when it is too small, and forgets nothing', async () => {
    const { terminal } = await onFirstJob()
    terminal.write('8 valve cover bo')
    await terminal.sees(' > 8 valve cover bo')
    terminal.resize(30, 6)
    await terminal.sees('too small')
    terminal.write('lts')
    terminal.resize(120, 40)
    await terminal.sees(' > 8 valve cover bolts')
    expect(terminal.rows().filter((row) => row.includes('[.1 OFF]'))).toHaveLength(1)
    terminal.resize(80, 24)
    await terminal.sees(/\[\.1 OFF\](?:.|\n)*─ Enter records ─+\n > 8 valve cover bolts/)
    expect(terminal.rows().filter((row) => row.includes('[.1 OFF]'))).toHaveLength(1)
  })

  test('without colours shows the same words and no colour', async () => {
    const { terminal } = await onFirstJob({ env: { NO_COLOR: '1' } })
    terminal.write('8 valve cover bolts\r')
    await terminal.sees('✓ RECORDED')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colours are control sequences
    expect(terminal.raw).not.toMatch(/\x1b\[(?:\d+;)*(?:3[0-7]|4[0-7]|38|48|9[0-7]|10[0-7])(?:;\d+)*m/)
  })
})
