import fs from 'node:fs'
import { constants } from 'node:os'
import { getSystemErrorName } from 'node:util'
import { describe, expect, test, vi } from 'vitest'
import { errnoOf, nodeFileSystem } from '../../../src/storage/files/file-system.ts'
import { troubleText } from '../../../src/words/storage-troubles.ts'
import { troubleOfError } from '../../../src/words/trouble-of.ts'
import { sessionIn, tell } from '../../session/support/sessions.ts'
import { strip } from '../../support/commands.ts'
import { openJob } from '../../support/record.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

/** An error of a system call as Node makes it: by the name that Node has for it, if it has one. */
function asNodeSays(errno: number, code = getSystemErrorName(-errno)): Error {
  return Object.assign(new Error(code), { errno: -errno, code, syscall: 'fdatasync' })
}

describe('the name of an error', () => {
  test('is that of the system, also where Node has none for it', () => {
    const { EIO, ENOSPC, ESTALE, EDQUOT } = constants.errno
    expect([EIO, ENOSPC].map((errno) => errnoOf(asNodeSays(errno)))).toEqual(['EIO', 'ENOSPC'])
    // Windows has no such errors.
    if (ESTALE !== undefined && process.platform !== 'win32')
      expect([ESTALE, EDQUOT].map((errno) => errnoOf(asNodeSays(errno)))).toEqual(['ESTALE', 'EDQUOT'])
    expect(errnoOf(asNodeSays(4094, 'UNKNOWN'))).toBe('EUNKNOWN')
    expect(errnoOf(asNodeSays(999, 'Unknown system error -999'))).toBe('E999')
  })

  test('is none for an error that no system call gave', () => {
    const others = [
      new Error('EIO'),
      Object.assign(new Error(''), { code: 'ERR_INVALID_ARG_TYPE' }),
      'EIO',
      null,
    ]
    expect(others.map(errnoOf)).toEqual([undefined, undefined, undefined, undefined])
    expect(errnoOf(Object.assign(new Error(''), { code: 'UNKNOWN' }))).toBeUndefined()
  })
})

describe.runIf(process.platform !== 'win32')('a network share that lets go of the files', () => {
  const { ESTALE } = constants.errno
  const gone = () => {
    throw asNodeSays(ESTALE)
  }

  test('while an entry is written: not recorded, and it goes on when the share is back', () => {
    const session = tell(sessionIn(temporaryFolder()), openJob)
    const flush = vi.spyOn(fs, 'fdatasyncSync').mockImplementation(gone)
    const outcome = session.send(strip('cover off'))
    flush.mockRestore()
    expect(outcome).toMatchObject({ kind: 'not-recorded', error: { code: 'ESTALE', takenBack: true } })
    expect(saidOf('error' in outcome && outcome.error)).toBe(
      'Not recorded: the network disk does not answer.',
    )
    expect(tell(session, strip('cover off')).entries()).toHaveLength(2)
  })

  test('while it is read', () => {
    const session = tell(sessionIn(temporaryFolder()), openJob)
    const reading = vi.spyOn(fs, 'openSync').mockImplementation(gone)
    try {
      expect(() => session.refresh()).toThrow(expect.objectContaining({ code: 'ESTALE' }))
      expect(saidOf(errorOf(() => session.refresh()))).toContain('the network disk does not answer')
      expect(saidOf(errorOf(() => nodeFileSystem.openSync('x', 'r')))).toContain(
        'the network disk does not answer',
      )
    } finally {
      reading.mockRestore()
    }
  })

  test('said in words wherever Node alone gave the name', () => {
    expect(saidOf(asNodeSays(ESTALE))).toBe(
      'The file journal.log cannot be read or written: the disk or the network failed, and the system does not say how.',
    )
  })
})

function saidOf(error: unknown): string | undefined {
  const trouble = troubleOfError(error, 'journal.log')
  return trouble === null ? undefined : troubleText(trouble).what
}

function errorOf(work: () => void): unknown {
  try {
    work()
    return null
  } catch (error) {
    return error
  }
}
